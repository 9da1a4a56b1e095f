"""The drawing kit: pens, lettering, dimensions, the page and its SVG."""

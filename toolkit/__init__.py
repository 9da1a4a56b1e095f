"""The hand-tool class workbook: one small dovetailed box, worked out from the board."""

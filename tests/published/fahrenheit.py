"""The handbook's equation for moisture a second time, with its own coefficients for °F."""


def moisture_by_fahrenheit(*, temperature: float, humidity: float) -> float:
    """FPL-GTR-190, Eq. 4-5, second set of coefficients; °F and % in, % out."""
    t, h = temperature, humidity / 100
    w = 330 + 0.452 * t + 0.00415 * t**2
    k = 0.791 + 0.000463 * t - 0.000000844 * t**2
    k1 = 6.34 + 0.000775 * t - 0.0000935 * t**2
    k2 = 1.09 + 0.0284 * t - 0.0000904 * t**2
    return (1800 / w) * (
        k * h / (1 - k * h)
        + (k1 * k * h + 2 * k1 * k2 * k**2 * h**2) / (1 + k1 * k * h + k1 * k2 * k**2 * h**2)
    )

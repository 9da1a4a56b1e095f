"""Random tests that a busy machine does not fail."""

from hypothesis import HealthCheck, settings


def calm(max_examples: int = 100) -> settings:
    """Settings without a clock: what is tested is what comes out, not how fast."""
    return settings(
        max_examples=max_examples, deadline=None, suppress_health_check=[HealthCheck.too_slow]
    )

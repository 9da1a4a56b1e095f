"""What the tests of cards and forms share with those of the lessons: a student's empty folder."""

from tests.lesson.conftest import folder

__all__ = ["folder"]

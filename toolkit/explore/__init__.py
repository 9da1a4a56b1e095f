"""Sliders: one module for each lesson, one engine for all of them."""

from toolkit.explore.cards import compare_count, guess_card, question_cards
from toolkit.explore.engine import Explorer
from toolkit.explore.hands_form import Asked, HandsForm
from toolkit.explore.own import own

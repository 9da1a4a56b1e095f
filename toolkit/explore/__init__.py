"""Sliders: one module for each lesson, one engine for all of them."""

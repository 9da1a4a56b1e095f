"""The five lessons: from a plan and the sliders' places to what is shown. No widgets."""

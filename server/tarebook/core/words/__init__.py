"""Sentences from tables of templates."""

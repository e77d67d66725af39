"""Doubts about what was typed or measured: slips that would reach the paper."""

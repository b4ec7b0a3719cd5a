"""The made-up people of the demo story."""

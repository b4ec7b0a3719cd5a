"""The demo story: four made-up people and their records."""

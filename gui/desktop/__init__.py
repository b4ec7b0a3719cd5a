"""How a bundle for people without a terminal is packed and started."""

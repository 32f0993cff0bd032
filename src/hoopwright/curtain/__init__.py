"""Work the sides: rolling, cranking, rope."""

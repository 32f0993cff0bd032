"""Tables, icons and texts that the program reads; installed as `hoopwright.resources`."""

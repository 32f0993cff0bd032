"""Every rule the plan must satisfy."""

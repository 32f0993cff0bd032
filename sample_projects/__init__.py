"""Sample farms, all invented; installed as `hoopwright.sample_projects`."""

"""The frame as built."""

from hoopwright.survey.bays import survey_frame
from hoopwright.survey.survey import Survey

__all__ = ["Survey", "survey_frame"]

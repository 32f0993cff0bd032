"""Why something cannot be entered, in words whose numbers take the reader's units."""

from hoopwright.quantity.units import Units
from hoopwright.quantity.working import Value, phrase, words


class EntryError(ValueError):
    """A value that cannot be: the field it stands in, what is wrong, and the mend.

    As text it names the field and speaks metric, as a farm file does.

    Attributes:
        field: Field or place in the farm.
        said: What is wrong and how to mend it.
    """

    def __init__(self, field: str, template: str, /, **terms: tuple[Value, str] | Value) -> None:
        """Keep the words; each keyword is a value with its unit code, or a plain text or count."""
        self.field = field
        self.said = phrase(template, **terms)
        super().__init__(f"{field}: {words(self.said, 'metric')}")

    def told(self, units: Units) -> str:
        """Return what is wrong and the mend, without the field, in the reader's units."""
        return words(self.said, units)

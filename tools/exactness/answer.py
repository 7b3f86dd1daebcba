"""What a model found."""

from dataclasses import dataclass


@dataclass
class Answer:
    """Whether it is proved, and with it openings and devices; the cost in whole numbers, none where there is no
    solution; the choice; seconds; and how many cuts were added."""

    proved: bool
    exact: bool
    cost: tuple | None
    choice: object
    seconds: float
    cuts: int = 0

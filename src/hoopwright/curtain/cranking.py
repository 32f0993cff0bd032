"""Work the curtains: from where each one hangs to what the hand feels at the handle."""

from hoopwright.cover.cover import Cover, CurtainSpan
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.dropping import drop_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rolling_up import roll_curtain
from hoopwright.farm import Bar, Limits, Part, Side, SideBoards, Weather
from hoopwright.farm.catalogue import Drive
from hoopwright.survey.survey import Survey


def work_curtains(
    boards: tuple[SideBoards, SideBoards],
    survey: Survey,
    sides: tuple[Side, Side],
    cover: Cover,
    bars: tuple[Bar, ...],
    drives: tuple[Drive, ...],
    parts: tuple[Part, ...],
    limits: Limits,
    weather: Weather,
    bar_wrap_m: float,
) -> tuple[CurtainWork, ...]:
    """Return how every curtain of a cover moves, turns and hangs, in the order of its curtains.

    Args:
        boards: Boards of both sides.
        survey: The frame as built.
        sides: Both sides as chosen.
        cover: The skin laid one way.
        bars: Roll bars of the catalogue.
        drives: Drives of the catalogue.
        parts: Parts of the catalogue; a stick of bar is as long as its part holds.
        limits: What people can do.
        weather: The storm that the wind rope is looked at with.
        bar_wrap_m: Film on a bar when its curtain is shut, m.
    """
    bar_of = {bar.key: bar for bar in bars}
    drive_of = {drive.key: drive for drive in drives}
    part_of = {part.key: part for part in parts}

    def hung(span: CurtainSpan) -> HungCurtain:
        side = sides[span.side]
        panel = side.panels[span.index]
        bar = bar_of[panel.bar]
        return HungCurtain(
            span=span,
            side=side,
            boards=boards[span.side],
            survey=survey,
            bar=bar,
            stick_m=part_of[bar.part].holds,
            drive=drive_of[panel.drive],
            limits=limits,
            weather=weather,
            wrap_m=bar_wrap_m,
        )

    return tuple(work_curtain(hung(span)) for span in cover.curtains)


def work_curtain(hung: HungCurtain) -> CurtainWork:
    """Return how one curtain moves, turns and hangs.

    Source:
        Each figure keeps its own working.
    """
    return drop_curtain(hung) if hung.drops else roll_curtain(hung)

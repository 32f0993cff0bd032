"""Which hoses of the catalogue are used: those chosen, or the plain choice where none was made."""

from hoopwright.farm import Air, Hose


def jumper_hose(air: Air, hoses: tuple[Hose, ...]) -> Hose | None:
    """Return the hose that jumpers are made of; the first one unless another was chosen.

    Args:
        air: Air between two layers as chosen.
        hoses: Hoses of the catalogue; without any there is none to use.
    """
    if air.jumper_hose is None:
        return hoses[0] if hoses else None
    return _hose(hoses, air.jumper_hose)


def feed_hose(air: Air, hoses: tuple[Hose, ...]) -> Hose | None:
    """Return the hose from the blower to the film; the widest one unless another was chosen.

    Args:
        air: Air between two layers as chosen.
        hoses: Hoses of the catalogue; without any there is none to use.
    """
    if air.feed_hose is None:
        return max(hoses, key=lambda hose: hose.bore_m, default=None)
    return _hose(hoses, air.feed_hose)


def _hose(hoses: tuple[Hose, ...], key: str) -> Hose | None:
    return next((hose for hose in hoses if hose.key == key), None)

"""A curtain as worked, made by hand, for the tests of what stands on it."""

from hoopwright.curtain.curtain import CurtainWork


def worked(side: int = 0, index: int = 0, **changes: object) -> CurtainWork:
    """Return a roll-up curtain of 20 m that opens 24 m2; the figures are invented."""
    figures: dict[str, object] = {
        "mark": f"side/{side}/panel/{index}",
        "side": side,
        "index": index,
        "kind": "roll_up",
        "cranked": "front",
        "length_m": 20.6,
        "travel_m": 1.25,
        "diameters_m": (0.035, 0.04, 0.05),
        "weights_n": (300.0, 305.0, 310.0),
        "torques_nm": (5.0, 6.0, 7.0),
        "hand_forces_n": (20.0, 24.0, 28.0),
        "hardest_n": 28.0,
        "turns": 9.0,
        "handle_turns": 9.0,
        "minutes": 0.3,
        "twist_rad": 0.1,
        "twist_trailing_m": 0.002,
        "play_trailing_m": 0.001,
        "uneven_trailing_m": 0.01,
        "trailing_m": 0.013,
        "joint_angles_rad": (0.1, 0.2, 0.4),
        "joint_swing": 1.1,
        "guide_m": 0.0,
        "energy_j": 300.0,
        "runaway_m_s": 3.0,
        "runaway_handle_m_s": 30.0,
        "hand_length_m": 60.0,
        "trailing_length_m": 80.0,
        "longest_m": 60.0,
        "bound_by": "hand force",
        "bar_sticks": 4,
        "bar_joints": 3,
        "opening_m2": 24.0,
        "gutter_gap_m": None,
        "pocket_gap_m": 0.01,
        "rope_m": 40.0,
        "rope_legs": 16,
        "eyes": 17,
        "rope_tension_n": 200.0,
        "eye_load_n": 150.0,
        "lift_lines": 0,
        "lift_line_m": 0.0,
        "pulleys": 0,
    }
    return CurtainWork(**{**figures, **changes})  # type: ignore[arg-type]

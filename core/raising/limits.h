#pragma once
/// The numbers by which the raising judges. Each says its unit, why it has this value, what a larger or smaller one
/// does, and its source in core/SOURCES.md. What the lead can change for one raising is in plan.h (RaisingLoads, Crew,
/// HoldChange); defaults of those stand here.

namespace bentbook::limits {

// What pushes and what is stood on.

/// Wind at which the crew stops, mph; usual 20 to 30. Larger: more temporary braces are asked for.
/// Source: SOURCES.md, "stop wind".
inline constexpr int kStopWindMph = 25;
/// Wind pressure in lb/ft² is this times mph². Source: SOURCES.md, "wind pressure".
inline constexpr double kWindPressure = 0.00256;
/// Drag of a bare timber, in wind pressures on its projected area; no shielding. 2 is a sharp-edged bar square to the
/// wind. Larger: more bracing. Source: SOURCES.md, "drag of a timber".
inline constexpr double kTimberDrag = 2.0;
/// Push from any side, per cent of the weight, where that is more than the wind: a bump, a pull on a rope.
/// Source: SOURCES.md, "push".
inline constexpr int kPushPerCent = 10;
/// Push from standing out of plumb, thousandths of the weight: 1/8 in a foot. Source: SOURCES.md, "out of plumb".
inline constexpr int kOutOfPlumbPerMille = 10;
/// A person with tools on a timber, lb; usual 200 to 250. Source: SOURCES.md, "person".
inline constexpr int kPersonLb = 200;

// How sure the weight is.

/// Shares of the computed weight between which every case has to hold: wood of one species differs by about a tenth.
/// A light timber tips sooner, a heavy one presses harder. Source: SOURCES.md, "light and heavy".
inline constexpr double kLightShare = 0.9, kHeavyShare = 1.15;
/// Added to the weights of picks, per cent: rain, ice, pegs and plates. Smaller: slings and crane are chosen closer to
/// their limit. Source: SOURCES.md, "wet timber".
inline constexpr int kWetPerCent = 15;

// What stands.

/// Free length over thickness up to which a nailed brace may push; beyond it, it only pulls. Dimensionless; 50 for
/// what stays, 75 while a building goes up. Larger: buckling is not looked at any more.
/// Source: SOURCES.md, "slender braces".
inline constexpr double kMostSlenderness = 75;
/// Pounds that one fastener of unknown rating counts for in any direction. Low on purpose: a peg of an inch, a steel
/// pin, a screw or nail of a rafter's foot carry several times that. Larger: fewer temporary braces are asked for.
/// Source: SOURCES.md, "unrated fasteners".
inline constexpr double kUnratedPegLb = 300, kUnratedPinLb = 600, kUnratedScrewLb = 150;
/// …a nailed brace, and a guy or prop: four 16d nails at its weaker end. Source: SOURCES.md, "unrated fasteners".
inline constexpr double kUnratedBraceLb = 400;
/// Screws or nails counted at a joint of which the frame shows no holes. Source: SOURCES.md, "unrated fasteners".
inline constexpr int kScrewsEach = 2;
/// Pounds that no contact is counted for beyond: several times the heaviest bent that a crew raises. Larger: a fall may
/// go unproven. Source: SOURCES.md, "most force".
inline constexpr double kMostForce = 20'000;
/// Load factor beyond which a margin is not looked for. Dimensionless; 1 stands. Larger: more work for a number that
/// nobody acts on. Source: SOURCES.md, "most factor".
inline constexpr double kMostFactor = 3;
/// Temporary braces proposed at once, at most: beyond that the order is wrong, not the bracing.
/// Source: SOURCES.md, "search effort".
inline constexpr int kMostBraces = 24;

// What goes in.

/// What may overlap and still counts as touching, inches: above rounding, below any clearance that is cut.
/// Source: SOURCES.md, "rounding".
inline constexpr double kTouching = 1e-3;
/// How far standing timbers may be spread at a joint, inches. Larger: pegs and braces below would not bear it.
/// Source: SOURCES.md, "spreading and swinging".
inline constexpr double kMostSpread = 8;
/// Room left beside each end when timbers are spread, inches: what hands need.
/// Source: SOURCES.md, "spreading and swinging".
inline constexpr double kHandRoom = 0.25;
/// How far a timber is swung into place about its end, degrees. Source: SOURCES.md, "spreading and swinging".
inline constexpr double kMostSwing = 12;

// Slings and crane.

/// Degrees from level below which a sling leg is warned of. Smaller: less warning. Source: SOURCES.md, "sling angles".
inline constexpr double kSlingWarn = 45;
/// …refused. Source: SOURCES.md, "sling angles".
inline constexpr double kSlingRefuse = 30;
/// …which points are moved closer together to reach. Source: SOURCES.md, "sling angles".
inline constexpr double kSlingWanted = 60;
/// Share of the crane's net capacity above which a lift is called near its limit. Source: SOURCES.md, "near the limit".
inline constexpr double kNearShare = 0.75;
/// Degrees from level at which a timber hangs before its slings are to be stopped from sliding.
/// Source: SOURCES.md, "how it hangs".
inline constexpr double kMostTilt = 10;
/// Degrees by which a load may lean over as it hangs without being said. Source: SOURCES.md, "how it hangs".
inline constexpr double kMostLean = 5;
/// Inches by which legs may differ before one is to be taken up. Source: SOURCES.md, "how it hangs".
inline constexpr double kMostTakeUp = 0.25;
/// Sine of 60°: a timber as steep as this hangs upright from one point. Source: SOURCES.md, "how it hangs".
inline constexpr double kUprightSine = 0.8660254037844386;
/// Inches to either side of the centre of gravity: timbers within it are slung by two points (and can lie on the
/// ground as a bent), else by four. Source: SOURCES.md, "how it hangs".
inline constexpr double kFlat = 24;

// By hand.

/// Pounds that one person lifts. Source: SOURCES.md, "hands".
inline constexpr int kHandLb = 50;
/// People whose load goes by hand whatever stands in the yard; a heavier post is walked up. Larger: more is carried
/// past a crane. Source: SOURCES.md, "by hand".
inline constexpr int kCarriers = 2;
/// People who set a piece by hand from a deck or staging, two at each end; what lies higher than kHandReach. Larger: a
/// heavy timber is lifted overhead. Source: SOURCES.md, "hands up high".
inline constexpr int kHandsUpHigh = 4;
/// Inches of a piece's length that a pair of hands on either side wants. Source: SOURCES.md, "room for hands".
inline constexpr int kHandsApart = 24;
/// Inches of a nailed brace: a shorter one holds little and splits. Source: SOURCES.md, "short braces".
inline constexpr double kShortestBrace = 18;
/// Inches that hands reach, then poles take over: 6 ft 6 in. Source: SOURCES.md, "reach".
inline constexpr double kHandReach = 78;
/// Free length over thickness from which a timber that is lifted flat wants a strongback.
/// Source: SOURCES.md, "strongbacks".
inline constexpr double kSlenderFlat = 30;
/// Sine of the angle out of a bent's plane from which a timber is none of it. Source: SOURCES.md, "how it hangs".
inline constexpr double kOutOfPlane = 0.3;
/// Inches under a bent that lies: hands, poles and slings go under. Source: SOURCES.md, "blocks".
inline constexpr double kLeastBlock = 4;
/// Share of a timber's length from its ends at which blocks bend it about least. Source: SOURCES.md, "blocks".
inline constexpr double kBlockShare = 0.22;
/// The rope's anchor ahead of the feet where nothing is said, in heights of the lifting point.
/// Source: SOURCES.md, "anchor".
inline constexpr double kAnchorShare = 1.5;

// What is held while a step closes.

/// Share of its weight that holders of a piece carry: seated in a mortise, and an upright standing on what bears it.
/// Source: SOURCES.md, "held pieces".
inline constexpr double kHeldSeated = 0.5, kHeldUpright = 0.15;
/// People who can get at one piece. Source: SOURCES.md, "held pieces".
inline constexpr int kHandsOnOne = 2;
/// People who stay on the tag lines of what hangs from a hook, on the ropes of what is tipped up or pulled up.
/// Source: SOURCES.md, "held pieces".
inline constexpr int kTagLines = 2;
/// Pieces on cleats, ropes or single pegs at once: more than that is a step of its own. Source: SOURCES.md, "held
/// pieces".
inline constexpr int kMostHeldOtherwise = 4;

}  // namespace bentbook::limits

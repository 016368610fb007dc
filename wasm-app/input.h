#pragma once
/// SDL's queue of touches and mouse moves, handed to the screens. Keys do not come through SDL here: the mirror's real
/// elements hold the keyboard focus, so the page forwards what they do not use (web/keys.js).

#include "screens/app/app.h"

namespace bentbook::page {

/// Empty SDL's queue into `app`. `width`, `height`: the canvas in CSS px.
void take_input(screens::App& app, float width, float height, double now_ms);

}  // namespace bentbook::page

#pragma once
/// The worked roof of a first launch: a small open timber shelter of our own invention.

#include "book/places.h"

namespace bentbook {

[[nodiscard]] Places demo_places();

}  // namespace bentbook

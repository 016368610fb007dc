#pragma once
/// Values that stand above the keypad's keys, a tap away: those entered lately, then the usual ones. None of them is
/// one that the field would refuse.

#include <string_view>

#include "measure/field.h"
#include "numeric/function_ref.h"
#include "screens/app/context.h"

namespace bentbook::screens {

/// For a field that the keypad was just opened on.
void offer_usual(Context&, std::string_view path, const Field&);
/// For a length or a slope of a new frame, which is no field yet; `stands`: it may be so.
void offer_new(Context&, std::string_view key, FieldKind kind, FunctionRef<bool(const Keypad::Reading&)> stands);

}  // namespace bentbook::screens

#pragma once
/// The lead's changes to a kind of timber's steps.

#include <span>
#include <vector>

#include "shop/log/rules.h"
#include "shop/steps.h"

namespace bentbook {

/// As the lead has changed it for this kind of timber. Rules that name no step of it do nothing.
[[nodiscard]] std::vector<WorkStep> with_rules(std::vector<WorkStep> steps, TimberKind kind,
                                               std::span<const Rule> rules);

}  // namespace bentbook

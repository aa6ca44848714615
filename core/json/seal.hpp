// The running hash of a record as it lies in a store: each entry is sealed together with the seal of the entry before it, the first
// one with the name of its owner. An entry that is changed, or that stands in another record, does not fit its seal any more.
// Errors: none.
#pragma once
#include <string>
#include <string_view>

namespace stopgap::json {

std::string seal_of(std::string_view before, std::string_view entry);

}  // namespace stopgap::json

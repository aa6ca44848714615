// Memory that runs out at a chosen place, once: a throw on purpose, as deep in the core as one likes.
#pragma once

namespace stopgap::tests {

extern long allocations_until_throw;  // below zero: memory is never short

}  // namespace stopgap::tests

#include "short_memory.hpp"

#include <cstdlib>
#include <new>

long stopgap::tests::allocations_until_throw = -1;

// In a file of their own, so that the compiler does not see through them and warn of a pair that is none.
void* operator new(std::size_t size) {
  long& left = stopgap::tests::allocations_until_throw;
  if (left >= 0 && left-- == 0) throw std::bad_alloc();
  if (void* memory = std::malloc(size)) return memory;
  throw std::bad_alloc();
}
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

// Starts the tests with a fixed seed for the generated ones: what failed once fails again. RC_PARAMS set by hand wins.
#include <gtest/gtest.h>

#include <cstdlib>
#include <iostream>

int main(int count, char** words) {
  setenv("RC_PARAMS", "seed=20261125", 0);
  std::cout << "RC_PARAMS " << std::getenv("RC_PARAMS") << '\n';
  testing::InitGoogleTest(&count, words);
  return RUN_ALL_TESTS();
}

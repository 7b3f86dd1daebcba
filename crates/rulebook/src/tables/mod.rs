//! Tables of the code that several rules read.

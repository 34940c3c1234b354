//! Tests of quantities. Sources are named beside the values they give.

mod factors;
mod numbers;
mod parsing;

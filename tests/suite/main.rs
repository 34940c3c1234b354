#[test] fn nothing() {}

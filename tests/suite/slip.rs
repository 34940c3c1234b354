//! The code on the slip is read back by a stock reader.

use sendoff::kiosk::headless::Driver;
use sendoff::kiosk::theme::{Look, TextSize, Theme};
use sendoff::kiosk::ui;

use crate::seal::has;

const SLIP: &str =
    "SENDOFF T2-5F3A9C-000123 2F6BC9E42B8C6B99CA768AA436D7B67EA6D36244BD0CA3C6F4186BA3041BAF61";

/// A page with nothing but the code.
fn page(_: &()) -> ui::Element<'_, ()> {
    let look = Look::new(Theme::Paper, TextSize::Usual, iced::Size::new(1280.0, 800.0), 1.0);
    iced::widget::container(ui::qr_code(&look, SLIP, 260.0)).center(iced::Fill).into()
}

#[test]
fn a_stock_reader_reads_the_slip() {
    if !has("zbarimg", &["--version"]) {
        return;
    }
    let program = iced::application(|| (), |(): &mut (), (): ()| {}, page);
    let png = Driver::open(&program, (640, 480)).unwrap().render().png().unwrap();
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("slip.png");
    std::fs::write(&path, png).unwrap();
    let read = std::process::Command::new("zbarimg")
        .args(["--quiet", "--raw", "--set", "*.enable=0", "--set", "qr.enable=1"])
        .arg(&path)
        .output()
        .unwrap();
    assert_eq!(String::from_utf8_lossy(&read.stdout).trim_end(), SLIP);
}

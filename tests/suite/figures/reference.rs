//! Reference values of independent libraries, kept in `tests/figures/reference.json` with version and date.

use std::io::Write as _;
use std::process::Command;

use serde_json::Value;

use super::*;
use sendoff::measure::Measure;

fn reference() -> Value {
    let text = fs::read_to_string(folder().join("reference.json")).expect("the kept values");
    serde_json::from_str::<Value>(&text).expect("JSON")["values"].take()
}

fn number(value: &Value) -> f64 {
    value.as_f64().or_else(|| value.as_str().and_then(|text| text.parse().ok())).expect("a number")
}

/// The script gives the kept values where its libraries are installed.
#[test]
fn the_kept_values_are_those_of_the_libraries() {
    let needs = "python3 with CoolProp, pint and ambiance";
    let there = Command::new("python3").args(["-c", "import CoolProp, pint, ambiance"]).output();
    if !there.is_ok_and(|out| out.status.success()) {
        let _ = writeln!(std::io::stderr(), "skipped: needs {needs}");
        assert_ne!(std::env::var("SENDOFF_REQUIRE_TOOLS").as_deref(), Ok("1"), "needs {needs}");
        return;
    }
    let script = folder().join("recompute.py");
    let out = Command::new("python3").arg(script).arg("--check").output().expect("python3 runs");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stdout));
}

/// CoolProp 8.0.0: water at 60 °F weighs 8.3372 lb/gal; the lot reckons 8.34. Propane there is 4.2285 lb/gal, its
/// higher heat less what vaporising takes lies within half a percent of the published 21,548 BTU/lb.
#[test]
fn assumptions_agree_with_coolprop() {
    let kept = reference();
    let facts = facts("wren");
    let assumed =
        |name: &str, measure| facts.quantity(name).and_then(|q| q.to(measure)).expect("an assumption");
    let water = assumed("assumed.water", Measure::PoundPerGallonUs);
    assert!((water / number(&kept["water_lb_per_gal_60F"]) - 1.0).abs() < 0.000_5, "{water}");
    let heat = assumed("assumed.propane_heat", Measure::BtuPerPound);
    let higher = number(&kept["propane_higher_heat_btu_per_lb"]);
    let vaporised = higher - number(&kept["propane_latent_btu_per_lb"]);
    assert!(heat < higher && heat > vaporised && (heat / higher - 1.0).abs() < 0.005, "{heat} of {higher}");
}

/// ambiance 1.3.1 (ICAO 1993), at geopotential heights.
#[test]
fn air_agrees_with_ambiance() {
    let kept = reference();
    let rows = kept["air_pascal_by_geopotential_m"].as_object().expect("rows");
    assert_eq!(rows.len(), 9);
    for (height, pascal) in rows {
        let height: f64 = height.parse().expect("meters");
        let got = figures::air_pressure(height);
        assert!((got - number(pascal)).abs() < 0.2, "{height} m: {got} against {pascal}");
    }
}

/// pint 0.25.3 with decimals.
#[test]
fn factors_agree_with_pint() {
    let kept = reference();
    for (name, from, to) in [
        ("lb_kg", Measure::Pound, Measure::Kilogram),
        ("gal_L", Measure::GallonUs, Measure::Liter),
        ("imp_gal_L", Measure::GallonImperial, Measure::Liter),
        ("mph_mps", Measure::Mph, Measure::MeterPerSecond),
    ] {
        let got = from.convert(1.0, to).expect("the same dimension");
        assert!((got / number(&kept["pint"][name]) - 1.0).abs() < 1e-15, "{name}: {got}");
    }
    let btu = Measure::WattHour.convert(1.0, Measure::BtuEnergy).expect("an energy");
    assert!((btu / number(&kept["pint"]["Wh_Btu"]) - 1.0).abs() < 1e-11, "{btu}");
}

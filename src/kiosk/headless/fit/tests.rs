//! Planted faults: each is found, and what is whole is not told.

use iced::Length;
use iced::widget::{Space, container};

use super::*;
use crate::kiosk::theme::{Look, fonts};
use crate::kiosk::ui::{self, Element, pinned, tap};

/// What makes a page with a fault in it.
type Planted = std::rc::Rc<dyn Fn(&Look) -> Element<'static, ()>>;

fn planted(page: &Planted) -> Element<'_, ()> {
    page(&Look::new(Theme::Paper, TextSize::Usual, Size::new(1280.0, 800.0), 1.0))
}

/// What is told of a page at 1280 by 800.
fn told(page: impl Fn(&Look) -> Element<'static, ()> + 'static) -> Vec<String> {
    let _ = fonts::only_bundled();
    let page: Planted = std::rc::Rc::new(page);
    let boot = move || std::rc::Rc::clone(&page);
    let program = iced::application(boot, |_: &mut Planted, (): ()| (), planted)
        .theme(|_: &Planted| iced::Theme::Light);
    let mut driver = Driver::open(&program, (1280, 800)).unwrap();
    let mut fit = Fit::new(driver.size);
    driver.operate(&mut fit);
    fit.faults().into_iter().map(|fault| fault.what).collect()
}

fn at(x: f32, y: f32, width: f32, height: f32) -> Rectangle {
    Rectangle { x, y, width, height }
}

/// A bare target of this size.
fn target(look: &Look, width: f32, height: f32) -> Element<'static, ()> {
    tap(look, Space::new().width(width).height(height), ()).into()
}

fn page(parts: Vec<(Rectangle, Element<'static, ()>)>) -> Element<'static, ()> {
    pinned(Size::new(1280.0, 800.0), parts)
}

#[test]
fn what_is_whole_is_not_told() {
    let found = told(|look| {
        page(vec![
            (at(10.0, 10.0, 200.0, 44.0), target(look, 200.0, 44.0)),
            (at(10.0, 54.0, 200.0, 64.0), target(look, 200.0, 64.0)),
            (at(300.0, 10.0, 300.0, 64.0), ui::primary(look, "Go on", ()).fill().into()),
            (at(300.0, 100.0, 300.0, 40.0), ui::body(look, "Words in their place").into()),
        ])
    });
    assert_eq!(found, Vec::<String>::new());
}

#[test]
fn a_key_without_words_is_told() {
    let found = told(|look| page(vec![(at(300.0, 100.0, 300.0, 40.0), ui::body(look, "⟨nowhere⟩").into())]));
    assert!(found.len() == 1 && found[0].contains("has no words"), "{found:?}");
}

#[test]
fn a_target_below_its_minimum_is_told() {
    let found = told(|look| page(vec![(at(10.0, 10.0, 200.0, 40.0), target(look, 200.0, 40.0))]));
    assert!(found.len() == 1 && found[0].contains("at least 44"), "{found:?}");
    // What the walk needs must be larger.
    let found = told(|look| {
        let press = tap(look, Space::new().width(200.0).height(50.0), ()).least(look.target());
        page(vec![(at(10.0, 10.0, 200.0, 50.0), press.into())])
    });
    assert!(found.len() == 1 && found[0].contains("at least 64"), "{found:?}");
}

#[test]
fn targets_over_each_other_are_told() {
    let found = told(|look| {
        page(vec![
            (at(10.0, 10.0, 200.0, 64.0), target(look, 200.0, 64.0)),
            (at(190.0, 40.0, 200.0, 64.0), target(look, 200.0, 64.0)),
        ])
    });
    assert!(found.len() == 1 && found[0].contains("lies over one"), "{found:?}");
}

#[test]
fn discs_are_told_when_they_meet_and_not_when_their_corners_do() {
    let disc = |look: &Look| -> Element<'static, ()> {
        tap(look, Space::new().width(56.0).height(56.0), ()).round().into()
    };
    let two = move |dx: f32, dy: f32| {
        told(move |look| {
            page(vec![
                (at(100.0, 100.0, 56.0, 56.0), disc(look)),
                (at(100.0 + dx, 100.0 + dy, 56.0, 56.0), disc(look)),
            ])
        })
    };
    assert_eq!(two(42.0, 42.0), Vec::<String>::new());
    assert_eq!(two(30.0, 30.0).len(), 1);
}

#[test]
fn words_half_over_a_target_are_told() {
    let place = |x: f32| {
        told(move |look| {
            page(vec![
                (at(10.0, 10.0, 300.0, 64.0), target(look, 300.0, 64.0)),
                (at(x, 20.0, 200.0, 40.0), ui::body(look, "Words").into()),
            ])
        })
    };
    assert_eq!(place(20.0), Vec::<String>::new());
    let found = place(250.0);
    assert!(found.len() == 1 && found[0].contains("lies half over a target"), "{found:?}");
}

#[test]
fn cut_laid_over_and_torn_words_are_told() {
    let long = "these words need several lines in so narrow a place";
    let found = told(move |look| {
        let words = container(ui::body(look, long).height(Length::Fill)).height(40.0);
        page(vec![(at(10.0, 10.0, 120.0, 40.0), words.into())])
    });
    assert!(found.iter().any(|f| f.contains("is cut")), "{found:?}");
    let found = told(|look| {
        page(vec![
            (at(10.0, 10.0, 300.0, 40.0), ui::body(look, "One").into()),
            (at(20.0, 20.0, 300.0, 40.0), ui::body(look, "Two").into()),
        ])
    });
    assert!(found.iter().any(|f| f.contains("lies over 'Two'")), "{found:?}");
    let found = told(|look| {
        page(vec![(at(10.0, 10.0, 60.0, 300.0), ui::body(look, "Incomprehensibilities").into())])
    });
    assert!(found.iter().any(|f| f.contains("is broken")), "{found:?}");
    let found = told(|look| page(vec![(at(1200.0, 10.0, 300.0, 40.0), ui::body(look, "Beyond").into())]));
    assert!(found.iter().any(|f| f.contains("sticks out")), "{found:?}");
}

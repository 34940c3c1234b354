//! Pages and parts of pages that need nothing of the gallery's state.

use iced::widget::{Column, Space, column, row};
use iced::{Alignment, Length};

use super::Message;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::*;

pub(super) fn padded<'a>(look: &Look, page: Element<'a, Message>) -> Element<'a, Message> {
    container(page).padding(look.gap(Gap::Wide)).width(Length::Fill).height(Length::Fill).into()
}

pub(super) fn top<'a>(look: &Look) -> Element<'a, Message> {
    row![
        body(look, "Wren · street side, rear").width(Length::Fill),
        chip(look, "English · miles", Message::Pressed("language")),
        chip(look, "Aa", Message::Pressed("letters")),
        strong_chip(look, "Emergency", Message::Pressed("emergency")),
    ]
    .spacing(look.gap(Gap::Medium))
    .align_y(Alignment::Center)
    .into()
}

pub(super) fn foot<'a>(look: &Look) -> Element<'a, Message> {
    let others = row![
        secondary(look, "Back", Message::Pressed("back")).bold(),
        secondary(look, "Not shown…", Message::Pressed("not shown")),
        secondary(look, "Question", Message::Pressed("question")),
        secondary(look, "Mark", Message::Pressed("mark")),
    ]
    .spacing(look.gap(Gap::Medium));
    let main = primary(look, "Hand over: 2 cautions", Message::Pressed("hand over")).fill();
    if look.portrait() {
        column![main, others].spacing(look.gap(Gap::Medium)).into()
    } else {
        row![others, main].spacing(look.gap(Gap::Medium)).into()
    }
}

pub(super) fn words_of_step<'a>(look: &Look) -> Element<'a, Message> {
    let how = || Some(("how we know".to_owned(), Message::Pressed("how")));
    column![
        title(look, "Emptying the waste tanks"),
        label(look, "SHOW"),
        body(look, "Gloves on. Hose on the unit first, then into the sewer hole."),
        label(look, "KNOW"),
        body(
            look,
            "Black first, then grey: the soapy water rinses the hose. Keep both valves shut during your stay."
        ),
        row![
            figure_card(look, "Toilet tank, 4 people", "4.1 days", how()),
            figure_card(look, "Grey tank, 4 people", "2.5 days", how()),
        ]
        .spacing(look.gap(Gap::Medium)),
    ]
    .spacing(look.gap(Gap::Small))
    .into()
}

pub(super) fn cautions<'a>(look: &Look) -> Element<'a, Message> {
    let done = symbol_in(look, Symbol::TickDisc, 30.0, look.colors().accent, look.colors().on_accent);
    column![
        caution_card(
            look,
            (Signal::Warning, "WARNING".into()),
            ("Germs in the hose".into(), "Renter holds".into()),
            strong(look, "open"),
            Some(Message::Pressed("caution")),
        ),
        caution_card(
            look,
            (Signal::Notice, "NOTICE".into()),
            ("Black before grey".into(), "Demonstrated, try 2".into()),
            done,
            None,
        ),
    ]
    .spacing(look.gap(Gap::Large))
    .into()
}

pub(super) fn parts<'a>(look: &Look) -> Element<'a, Message> {
    let left = column![
        section(look, "Choosing"),
        radio_row(look, Choice::new("Nothing holds it", false, Message::Pressed("radio"))),
        radio_row(
            look,
            Choice {
                line: Some("until 15 mph".into()),
                ..Choice::new("It may stay out", true, Message::Pressed("radio"))
            },
        ),
        choices(
            look,
            ["Fresh", "Grey", "Toilet", "Propane", "House battery"]
                .map(|name| { Choice::new(name, name == "Grey", Message::Pressed("chip")) })
        ),
        checkbox(look, true, body(look, "The keys are with the renter"), Message::Pressed("tick")),
        stepper(look, "5 nights", Some(Message::Pressed("less")), Some(Message::Pressed("more"))),
        stepper(look, "1 night", None, Some(Message::Pressed("more"))),
        progress(look, 0.4),
    ]
    .spacing(look.gap(Gap::Medium))
    .width(Length::Fill);
    let right = column![
        section(look, "Saying"),
        note(
            look,
            "Not yet: black goes first.",
            Some("Grey water then rinses the hose clean. Steps 1 to 3 stay.".into())
        ),
        figure_card(look, "Payload left", "1,587 lb (719 kg)", None),
        saving(look, "Saving"),
        secondary(
            look,
            "Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichen",
            Message::Pressed("long")
        )
        .fill(),
        body(look, "Ελληνικά, Кириллица, Zürich, Łódź, ¿Señor?"),
        row![circle_number(look, 1, true, 40.0), circle_number(look, 2, false, 40.0)]
            .spacing(look.gap(Gap::Small)),
        quiet(look, "I will not confirm this", Message::Pressed("refuse")),
    ]
    .spacing(look.gap(Gap::Medium))
    .width(Length::Fill);
    let both: Element<'a, Message> = if look.portrait() {
        column![left, right].spacing(look.gap(Gap::Wide)).into()
    } else {
        row![left, right].spacing(look.gap(Gap::Huge)).into()
    };
    scroll(look, both).height(Length::Fill).into()
}

pub(super) fn signs<'a>(look: &Look) -> Element<'a, Message> {
    let hazards = Hazard::ALL.map(|hazard| {
        column![hazard_symbol(look, hazard, 150.0), small(look, format!("{hazard:?}"))]
            .align_x(Alignment::Center)
            .into()
    });
    let words = [
        (Signal::Danger, "DANGER"),
        (Signal::Warning, "WARNING"),
        (Signal::Caution, "CAUTION"),
        (Signal::Notice, "NOTICE"),
    ];
    let badges = words.map(|(signal, word)| signal_badge(look, signal, word));
    let all = [
        Symbol::Tick,
        Symbol::TickDisc,
        Symbol::Cross,
        Symbol::Right,
        Symbol::Left,
        Symbol::Up,
        Symbol::Down,
        Symbol::Plus,
        Symbol::Minus,
        Symbol::Search,
        Symbol::Shield,
        Symbol::ShieldBroken,
        Symbol::Alert,
        Symbol::Backspace,
        Symbol::Shift,
        Symbol::Open,
        Symbol::Ring,
        Symbol::Question,
        Symbol::NoPicture,
    ];
    let symbols = all.map(|which| symbol(look, which, 44.0));
    let gap = look.gap(Gap::Large);
    let mut page = Column::new().spacing(gap);
    page = page.push(iced::widget::Row::with_children(hazards).spacing(gap).wrap().vertical_spacing(gap));
    page = page.push(iced::widget::Row::with_children(badges).spacing(gap).align_y(Alignment::Center).wrap());
    page = page.push(iced::widget::Row::with_children(symbols).spacing(gap).wrap());
    scroll(look, page).height(Length::Fill).into()
}

pub(super) fn digits<'a>(look: &Look, pad: Keys) -> Element<'a, Message> {
    let pad = number_pad(look, pad, "Done", Message::Key);
    column![title(look, "Your PIN"), Space::new().height(Length::Fill), pad]
        .spacing(look.gap(Gap::Large))
        .into()
}

pub(super) fn question<'a>(look: &Look) -> Element<'a, Message> {
    column![
        section(look, "Leave this step out?"),
        body(look, "The record will say that it was not shown, and why."),
        row![
            secondary(look, "No", Message::Pressed("no")),
            primary(look, "Leave it out", Message::Pressed("yes")),
        ]
        .spacing(look.gap(Gap::Medium)),
    ]
    .spacing(look.gap(Gap::Large))
    .into()
}

pub(super) fn list<'a>(look: &Look) -> Element<'a, Message> {
    let rows = (1..=40).map(|number| {
        let line = row![symbol(look, Symbol::Search, 24.0), body(look, format!("Row {number}"))]
            .spacing(look.gap(Gap::Medium));
        press_panel(look, Edge::Press, line, Message::Row(number))
    });
    scroll(look, Column::with_children(rows).spacing(look.gap(Gap::Small))).height(Length::Fill).into()
}

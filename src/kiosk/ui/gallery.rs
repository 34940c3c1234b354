//! A program that shows every component, for tests and for looking at.

use std::time::Duration;

use iced::widget::{Space, column, row};
use iced::{Alignment, Length, Program};

use super::*;
use crate::kiosk::plan::{self, Floor, Orientation, Peg, PegState, PlanMark, PlanShape};
use crate::kiosk::theme::{Gap, TextSize, Theme, fonts};

use parts::{cautions, digits, foot, list, padded, parts, question, signs, top, words_of_step};
pub use sample::{heron, pegs, plover, wren};

mod parts;
mod sample;

/// The pages of the gallery.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Page {
    Walk,
    Inside,
    Yard,
    Caution,
    Parts,
    Signs,
    Sign,
    Type,
    Digits,
    Dialog,
    List,
}

impl Page {
    pub const ALL: [Self; 11] = [
        Self::Walk,
        Self::Inside,
        Self::Yard,
        Self::Caution,
        Self::Parts,
        Self::Signs,
        Self::Sign,
        Self::Type,
        Self::Digits,
        Self::Dialog,
        Self::List,
    ];
}

/// What can happen; all of it is kept.
#[derive(Debug, Clone, PartialEq)]
pub enum Message {
    Pressed(&'static str),
    Row(usize),
    Peg(u16),
    Point(i32, i32),
    Hold(HoldEvent),
    Ink(InkEvent),
    Name(String),
    Search(String),
    Key(KeyPress),
    NextPage,
}

/// The gallery.
pub struct Gallery {
    pub page: Page,
    pub theme: Theme,
    pub text: TextSize,
    pub log: Vec<Message>,
    pub strokes: Vec<Stroke>,
    pub name: String,
    pub search: String,
    pub marking: bool,
    pub live_after: Duration,
    pub layout: Layout,
    pub still: bool,
    pub pad: Keys,
    pub turn: u64,
    shapes: [PlanShape; 3],
    pegs: Vec<Peg>,
    marks: Vec<PlanMark>,
}

impl Gallery {
    pub fn new(page: Page, theme: Theme) -> Self {
        Self {
            page,
            theme,
            text: TextSize::Usual,
            log: Vec::new(),
            strokes: vec![sample::signature()],
            name: String::new(),
            search: "muller awn".into(),
            marking: false,
            live_after: Duration::ZERO,
            layout: Layout::EnUs,
            still: false,
            pad: Keys::Decimal,
            turn: 0,
            shapes: [wren(), plover(), heron()],
            pegs: pegs(),
            marks: vec![PlanMark { at: (30.0, 290.0), number: 1 }],
        }
    }

    fn update(&mut self, message: Message) {
        match &message {
            Message::Ink(InkEvent::StrokeDone(stroke)) => self.strokes.push(stroke.clone()),
            Message::Name(name) => self.name.clone_from(name),
            Message::Search(text) => self.search.clone_from(text),
            Message::NextPage => self.turn += 1,
            _ => {}
        }
        self.log.push(message);
    }

    fn view(&self) -> Element<'_, Message> {
        let settings = Wishes { theme: self.theme, text: self.text, still: self.still, ..Wishes::default() };
        let typed = Typed { done: "Done".into(), layout: self.layout };
        root(settings, Some(typed), move |look| self.page(look))
    }

    fn page(&self, look: Look) -> Element<'_, Message> {
        let page = match self.page {
            Page::Walk => self.walk(&look),
            Page::Inside => self.inside(&look),
            Page::Yard => self.yard(&look),
            Page::Caution => return self.caution(&look.larger()),
            Page::Parts => parts(&look),
            Page::Signs => signs(&look),
            Page::Sign => self.sign(&look),
            Page::Type => self.type_page(&look),
            Page::Digits => digits(&look, self.pad),
            Page::Dialog => {
                return dialog(
                    &look,
                    padded(&look, parts(&look)),
                    question(&look),
                    Some(Message::Pressed("closed")),
                );
            }
            Page::List => list(&look),
        };
        padded(&look, page)
    }

    fn walk(&self, look: &Look) -> Element<'_, Message> {
        let [shape, ..] = &self.shapes;
        let view = |orientation| {
            let view = plan::view(look, shape, &self.pegs, orientation, Floor::Outside).marks(&self.marks);
            let view = view.on_peg(Message::Peg);
            if self.marking { view.on_point(|(x, y)| Message::Point(x as i32, y as i32)) } else { view }
        };
        if look.portrait() {
            let plan = panel(look, view(Orientation::NoseLeft)).padding(0.0).height(look.px(330.0));
            return column![
                top(look),
                plan,
                words_of_step(look),
                Space::new().height(Length::Fill),
                foot(look)
            ]
            .spacing(look.gap(Gap::Large))
            .into();
        }
        let caption =
            small(look, "Outside · 6 of 11 · 24 min left").width(Length::Fill).align_x(Alignment::Center);
        let plan = column![view(Orientation::NoseUp), caption.height(look.px(40.0))];
        let plan = panel(look, plan).padding(0.0).width(look.px(336.0)).height(Length::Fill);
        let right = column![
            panel(look, plan::close_up(look, shape, (-49.0, 275.0)))
                .padding(look.line())
                .height(look.px(220.0)),
            cautions(look),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::FillPortion(4));
        let middle = row![container(words_of_step(look)).width(Length::FillPortion(5)), right]
            .spacing(look.gap(Gap::Wide));
        let page = column![top(look), scroll(look, middle).height(Length::Fill), foot(look)]
            .spacing(look.gap(Gap::Large));
        row![plan, page].spacing(look.gap(Gap::Large)).into()
    }

    fn inside(&self, look: &Look) -> Element<'_, Message> {
        let all = self.shapes.iter().map(|shape| {
            let view =
                plan::view(look, shape, &self.pegs, Orientation::NoseUp, Floor::Inside).on_peg(Message::Peg);
            panel(look, view).padding(0.0).height(Length::Fill).into()
        });
        iced::widget::Row::with_children(all).spacing(look.gap(Gap::Large)).into()
    }

    fn yard(&self, look: &Look) -> Element<'_, Message> {
        let card = |shape, name: &'static str, line: &'static str| {
            let text = column![section(look, name), body(look, line), small(look, "Ready")]
                .spacing(look.gap(Gap::Small));
            let plan = container(plan::thumbnail(look, shape)).width(Length::Fill).height(Length::Fill);
            let inside = column![
                row![plan, container(text).width(Length::Fill)]
                    .spacing(look.gap(Gap::Large))
                    .height(Length::Fill),
                primary(look, "Start the walk", Message::Pressed("start")).fill(),
            ];
            panel(look, inside.spacing(look.gap(Gap::Large))).height(Length::Fill)
        };
        let [wren, plover, heron] = &self.shapes;
        let cards = row![
            card(wren, "Wren", "26 ft Class C motorhome"),
            card(plover, "Plover", "19 ft campervan"),
            card(heron, "Heron", "24 ft travel trailer"),
        ];
        column![title(look, "Yard"), rule(look), cards.spacing(look.gap(Gap::Large))]
            .spacing(look.gap(Gap::Large))
            .into()
    }

    fn caution(&self, look: &Look) -> Element<'_, Message> {
        let end = row![
            on_signal(look, Signal::Danger, "2 of 3"),
            chip(look, "English · miles", Message::Pressed("language"))
        ]
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center);
        let said = column![
            label(look, "WHAT IS DANGEROUS"),
            hazard_line(look, "Generator exhaust holds carbon monoxide. You cannot see or smell it."),
            label(look, "WHAT IT DOES"),
            lead(look, "It can kill people asleep in the unit within minutes."),
            label(look, "WHAT TO DO"),
            lead(
                look,
                "Never run it while anyone sleeps, or closer than 20 ft to people, tents or a building."
            ),
        ]
        .spacing(look.gap(Gap::Small));
        let sign = hazard_symbol(look, Hazard::Gas, if look.portrait() { 180.0 } else { 280.0 });
        let middle: Element<'_, Message> = if look.portrait() {
            column![sign, said].spacing(look.gap(Gap::Wide)).into()
        } else {
            row![sign, said].spacing(look.gap(Gap::Huge)).into()
        };
        let press = hold(look, "Press and hold", "until the ring closes", Message::Hold)
            .page(self.turn)
            .live_after(self.live_after);
        let who = choices(
            look,
            [
                Choice::new("Driver 1", true, Message::Pressed("one")),
                Choice::new("Driver 2", false, Message::Pressed("two")),
            ],
        );
        let refuse = column![
            secondary(look, "I have a question", Message::Pressed("question")),
            quiet(look, "I will not confirm this", Message::Pressed("refuse")),
        ]
        .align_x(Alignment::Center)
        .spacing(look.gap(Gap::Small));
        let answers =
            column![label(look, "WHO ANSWERS"), who].spacing(look.gap(Gap::Small)).width(Length::Fill);
        let foot: Element<'_, Message> = if look.portrait() {
            column![answers, row![press, refuse].align_y(Alignment::Center)].into()
        } else {
            row![answers, refuse, press].align_y(Alignment::Center).spacing(look.gap(Gap::Large)).into()
        };
        let page = column![scroll(look, middle).height(Length::Fill), foot].padding(look.gap(Gap::Huge));
        column![signal_header(look, Signal::Danger, "DANGER", end), page.spacing(look.gap(Gap::Large))].into()
    }

    fn sign(&self, look: &Look) -> Element<'_, Message> {
        let pad = panel(look, ink(look, &self.strokes, Message::Ink)).padding(0.0).height(Length::Fill);
        let consent = checkbox(
            look,
            false,
            body(
                look,
                "I want this record on the screen and as a file. I may ask for paper, and may change my mind.",
            ),
            Message::Pressed("consent"),
        );
        let foot = row![
            chip(look, "Undo", Message::Pressed("undo")),
            chip(look, "Clear", Message::Pressed("clear")),
            Space::new().width(Length::Fill),
            primary(look, "Next signer", Message::Pressed("next")),
        ];
        column![
            title(look, "Driver 1 signs here"),
            panel(look, consent),
            pad,
            foot.spacing(look.gap(Gap::Medium)).align_y(Alignment::Center),
        ]
        .spacing(look.gap(Gap::Large))
        .into()
    }

    fn type_page(&self, look: &Look) -> Element<'_, Message> {
        let name =
            field(look, "name", &self.name, Message::Name).label("Name").placeholder("as on the licence");
        let search = field(look, "search", &self.search, Message::Search)
            .find()
            .error(Some("No record has this".into()));
        let high = Space::new().height(look.px(340.0));
        let last = field(look, "last", &self.name, Message::Name).label("A field further down").names();
        let page =
            column![title(look, "Who drives?"), name, search, high, last].spacing(look.gap(Gap::Large));
        scroll(look, page).height(Length::Fill).into()
    }
}

/// The gallery as a program.
pub fn program(
    page: Page,
    theme: Theme,
) -> iced::Application<impl Program<State = Gallery, Message = Message, Theme = iced::Theme>> {
    let boot = move || Gallery::new(page, theme);
    let mut program = iced::application(boot, Gallery::update, Gallery::view)
        .theme(|gallery: &Gallery| style::toolkit(gallery.theme))
        .default_font(fonts::REGULAR);
    for file in fonts::files() {
        program = program.font(file);
    }
    program
}

/// How a stop stands, for pages that need all of them.
pub const STATES: [PegState; 6] = [
    PegState::Open,
    PegState::Here,
    PegState::PartDone,
    PegState::Done,
    PegState::Skipped,
    PegState::Unanswered,
];

//! The cover, which stands there while nobody reads.

use iced::widget::{Column, Row, Space, column, container, row};
use iced::{Alignment, Length, Padding};

use super::{Message, Page, Show};
use crate::kiosk::plan;
use crate::kiosk::theme::{Gap, Look, Type, style};
use crate::kiosk::ui::{self, Element, Symbol};

impl<'a> Show<'a> {
    /// The name of the unit, and what a frightened person needs at once.
    pub(super) fn cover(&self) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let wide = look.gap(Gap::Wide);
        let name = ui::text(look, Type::Signal, self.say(&format!("unit-{}", self.state.unit)));
        let drawing =
            self.ctx.shapes.get(&self.state.unit).map(|shape| {
                container(plan::thumbnail(look, shape)).width(look.px(220.0)).height(Length::Fill)
            });
        let words = column![
            name,
            ui::lead(look, self.say("reread-cover-what")),
            Space::new().height(look.gap(Gap::Large)),
            ui::secondary(look, self.say("reread-cover-tap"), Message::PageChosen(Page::Home))
                .bold()
                .fill()
                .height(96.0)
                .after(Symbol::Right)
                .id("reread-open"),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill);
        let middle = Row::new().push(drawing).push(words).spacing(look.gap(Gap::Huge));
        let middle = container(middle.align_y(Alignment::Center)).center_y(Length::Fill).height(Length::Fill);
        let danger = column![ui::section(look, self.say("reread-cover-danger")), self.danger(look)]
            .spacing(look.gap(Gap::Small));
        let page = column![middle, danger, self.end()].spacing(wide).height(Length::Fill);
        let padding = Padding { top: look.gap(Gap::Large), left: wide, right: wide, bottom: wide };
        container(page).padding(padding).width(Length::Fill).height(Length::Fill).into()
    }

    /// Ways out of danger, beside each other where there is room: one tap from here.
    fn danger(&self, look: &Look) -> Element<'a, Message> {
        let (gap, colors) = (look.gap(Gap::Medium), look.colors());
        let grave = self.state.prepared.guides.iter().filter(|g| g.grave);
        let guides =
            grave.map(|g| (self.say(&format!("guide-{}", g.id)), Message::GuideChosen(g.id.clone())));
        // A smell of gas has its own guide; any other has the card.
        let card =
            ["reread-cover-smell", "reread-cover-fire"].map(|key| (self.say(key), Message::EmergencyPressed));
        // As high as three lines, where they stand beside each other.
        let lines = if look.portrait() { 1.0 } else { 3.0 };
        let high = lines * look.size(Type::Strong) * 1.3;
        let ways = guides.chain(card).map(|(words, message)| {
            // The strongest contrast of the page: what is looked for in the dark, in fright.
            let sign = ui::symbol::symbol_in(look, Symbol::Alert, 40.0, colors.leaf, colors.ink);
            let words = ui::strong(look, words).color(colors.leaf).width(Length::Fill);
            let line = row![sign, words].spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
            let face = container(line).width(Length::Fill).align_y(Alignment::Center);
            let face = ui::at_least(high.max(look.target()), face.into());
            let ground = style::ground(look, colors.ink, colors.ink);
            let face = container(face).padding(look.gap(Gap::Large)).style(move |_| ground);
            container(Element::from(ui::tap(look, face, message))).width(Length::FillPortion(1)).into()
        });
        if look.portrait() {
            return Column::with_children(ways).spacing(gap).into();
        }
        Row::with_children(ways).spacing(gap).into()
    }

    /// Another language and other measures, where the lot offers them.
    pub(super) fn readers(&self) -> Row<'a, Message, iced::Theme, iced::Renderer> {
        let look = &self.ctx.look;
        let language = self.other_language().map(|(lang, name)| {
            Element::from(ui::chip(look, name, Message::LanguageChosen(lang)).id("reread-language"))
        });
        let measures = self.other_measures().map(|(system, name)| {
            Element::from(ui::chip(look, name, Message::MeasuresChosen(system)).id("reread-measures"))
        });
        Row::new().push(language).push(measures).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center)
    }

    fn other_language(&self) -> Option<(String, String)> {
        let offered = &self.ctx.scripts.lot.value.languages;
        let at = offered.iter().position(|l| *l == self.state.reader.lang).map_or(0, |at| at + 1);
        let other = offered.get(at).or_else(|| offered.first())?;
        if *other == self.state.reader.lang {
            return None;
        }
        let reader = crate::words::Reader::new(other, self.state.reader.system);
        let name = self.ctx.scripts.words.say(&reader, "caution-page-language", &crate::words::Args::new());
        Some((other.clone(), name))
    }

    /// The measures after those in use, and their name.
    fn other_measures(&self) -> Option<(crate::measure::System, String)> {
        let offered = &self.ctx.scripts.lot.value.measures;
        let system = |word: &String| crate::kiosk::hall::system_of(word);
        let at = offered.iter().position(|m| system(m) == self.state.reader.system).map_or(0, |at| at + 1);
        let other = offered.get(at).or_else(|| offered.first())?;
        if system(other) == self.state.reader.system {
            return None;
        }
        let args = crate::words::Args::new().text("system", other.clone());
        Some((system(other), self.say_with("opening-measures-name", args)))
    }
}

//! On which side of the page the figures stand: below the words, or below the cautions where more is seen.

use super::super::words::Letters;
use super::super::{Page, fit};
use crate::kiosk::theme::{Gap, Type};

/// The least height of a picture beside the words, as written.
const PICTURE: f32 = 170.0;

impl Page<'_> {
    /// Whether the figures stand right, with words in a column of this width: where more of them is seen there than
    /// below the words.
    pub(in super::super) fn figures_at_right(&self, left: f32, height: f32) -> bool {
        let look = &self.ctx.look;
        let counted = self.step.kit || !self.step.leaving.is_empty();
        if counted || self.state.figures.is_empty() {
            return false;
        }
        let (words, picture) = self.portions();
        let right = left * f32::from(picture) / f32::from(words);
        let width = left - look.px(super::super::page::BAR);
        let others = self.after(true).len() as f32 * look.px(90.0)
            + self.before().len() as f32 * look.px(140.0)
            + look.gap(Gap::Large);
        let text = self.text().height(Letters::usual(look), width) + others;
        let (all_left, all_right) = (self.figures_height(width), self.figures_height(right));
        let beside = look.px(PICTURE) + self.below_picture(right) - all_right;
        // How much of them is seen before anything is scrolled.
        let seen = |taken: f32, all: f32| ((height - taken) / all.max(1.0)).clamp(0.0, 1.0);
        // The picture gives way for them, so a hair more is not enough.
        seen(beside, all_right) > seen(text, all_left) + 0.2
    }

    /// What stands below the picture, figures and all.
    pub(in super::super) fn below_picture(&self, width: f32) -> f32 {
        let look = &self.ctx.look;
        let gap = look.gap(Gap::Large);
        let line = look.size(Type::Small) * 1.3;
        let readings = self.step.readings.len() as f32 * (look.px(64.0) + gap);
        let cautions = self.step.cautions.iter().map(|caution| {
            let title = self.say_unit(&format!("caution-{}.title", caution.id));
            let room = (width - self.caution_sides()).max(1.0);
            let title = fit::room(look, Type::Strong, &title, room).height;
            // How it is answered takes up to two lines in so narrow a place.
            look.px(80.0).max(title + 2.0 * line + 2.0 * gap) + gap
        });
        2.0 * line + 2.0 * gap + readings + cautions.sum::<f32>() + self.figures_height(width)
    }

    /// What stands at the sides of the words of a caution: its badge and what is between. How it is answered stands
    /// below its title.
    pub(in super::super) fn caution_sides(&self) -> f32 {
        let look = &self.ctx.look;
        look.size(Type::Label) * 6.4 + 2.0 * look.gap(Gap::Large) + look.gap(Gap::Medium)
    }
}

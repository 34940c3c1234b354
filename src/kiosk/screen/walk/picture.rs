//! The picture of a step: a drawing or photo of the lot, shown as large as its space allows.
//!
//! Drawings are made on paper, in dark lines, so they keep that ground in every theme. A drawing that is missing
//! or broken shows a sign in its place.

use iced::advanced::image as raster;
use iced::advanced::layout::{self, Layout};
use iced::advanced::svg::{Data, Handle, Renderer as _, Svg};
use iced::advanced::widget::Tree;
use iced::advanced::{Widget, mouse, renderer};
use iced::widget::{column, container};
use iced::{Alignment, Length, Rectangle, Size};

use crate::kiosk::guard;
use crate::kiosk::guard::picture::{Picture as Photo, PictureFault};
use crate::kiosk::theme::{Gap, Look, Theme, style};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::script::Bundle;

/// Largest drawing that is shown, in bytes; ours hold a few thousand.
const MOST: usize = 512 * 1024;

/// Longest side of a photo as shown, in pixels.
const SIDE: u32 = 1600;

/// A photo as it comes from decoding.
pub(in crate::kiosk) type Decoded = Result<Photo, PictureFault>;

/// A picture that was read once, to be shown often.
#[derive(Debug, Clone)]
pub(in crate::kiosk) enum Picture {
    /// A drawing.
    Drawing(Handle),
    /// A photo.
    Photo(Photo),
    /// A photo that is not decoded yet: this is its id.
    Waiting(String),
    /// A photo that is being decoded.
    Decoding(String),
    /// It is not there, or cannot be shown.
    Missing,
}

impl Picture {
    /// The picture with this id in the files of a lot: a drawing, else a photo.
    pub fn load(bundle: &Bundle, id: &str) -> Self {
        let file = |kind: &str| bundle.get(&format!("assets/pictures/{id}.{kind}"));
        if let Some(bytes) = file("svg").filter(|b| is_closed(b)) {
            return Self::Drawing(Handle::from_memory(bytes.to_vec()));
        }
        if photo_of(bundle, id).is_some() { Self::Waiting(id.to_owned()) } else { Self::Missing }
    }

    /// Where the picture itself stands when its paper has this size; none where nothing is shown.
    pub fn shown_in(&self, look: &Look, size: Size) -> Option<Rectangle> {
        let paper = Rectangle::with_size(size);
        match self {
            Self::Drawing(handle) => Some(contained(shape(handle)?, paper.shrink(look.radius()))),
            Self::Photo(Photo::Raster(raster::Handle::Rgba { width, height, .. })) => {
                let size = Size::new(*width as f32, *height as f32);
                Some(contained(size, paper.shrink(look.gap(Gap::Small))))
            }
            Self::Photo(_) | Self::Waiting(_) | Self::Decoding(_) | Self::Missing => None,
        }
    }

    /// The photo that is to be decoded now, told once.
    pub fn wanted(&mut self) -> Option<String> {
        let Self::Waiting(id) = self else { return None };
        let id = id.clone();
        *self = Self::Decoding(id.clone());
        Some(id)
    }

    /// Takes in a photo, if it is the one that is waited for.
    pub fn decoded(&mut self, id: &str, photo: Decoded) {
        if matches!(self, Self::Decoding(wanted) if wanted == id) {
            *self = photo.map_or(Self::Missing, Self::Photo);
        }
    }

    /// The picture on its paper, in the space it is given.
    pub fn view<'a, M: 'a>(&self, look: &Look, missing_words: String) -> Element<'a, M> {
        let paper = Theme::Paper.palette();
        let ground = style::ground(look, paper.leaf, look.colors().line);
        let sign = ui::symbol::symbol_in(look, Symbol::NoPicture, 72.0, paper.edge, paper.leaf);
        let words = ui::small(look, missing_words).color(paper.ink);
        let missing = column![sign, words].spacing(look.gap(Gap::Small)).align_x(Alignment::Center);
        let missing = container(missing).center(Length::Fill).into();
        let shown: Element<'a, M> = match self {
            Self::Drawing(handle) => Element::new(Drawing { handle: handle.clone(), missing }),
            Self::Photo(photo) => return guard::picture::show(look, Some(photo), String::new()),
            Self::Waiting(_) | Self::Decoding(_) => iced::widget::Space::new().into(),
            Self::Missing => missing,
        };
        container(shown)
            .padding(look.radius())
            .width(Length::Fill)
            .height(Length::Fill)
            .style(move |_| ground)
            .into()
    }
}

/// The bytes of the photo with this id.
fn photo_of<'b>(bundle: &'b Bundle, id: &str) -> Option<&'b [u8]> {
    let file = |kind: &str| bundle.get(&format!("assets/pictures/{id}.{kind}"));
    ["png", "jpg", "jpeg"].into_iter().find_map(file).map(AsRef::as_ref)
}

/// Decodes the photo with this id; takes its time.
///
/// # Errors
/// There is none, or it cannot be shown.
pub(in crate::kiosk) fn decode(bundle: &Bundle, id: &str) -> Result<Photo, PictureFault> {
    let bytes = photo_of(bundle, id).unwrap_or_default();
    match guard::picture::decode(bytes, SIDE)? {
        photo @ Photo::Raster(_) => Ok(photo),
        // A drawing under the name of a photo has not been looked through.
        Photo::Vector(_) => Err(PictureFault::OtherKind),
    }
}

impl super::State {
    /// The photo that is to be decoded now, told once.
    pub(in crate::kiosk) fn photo_wanted(&mut self) -> Option<String> {
        self.picture.as_mut().and_then(Picture::wanted)
    }

    /// A photo is decoded, or cannot be. One of a page that was left meanwhile is too late.
    pub(in crate::kiosk) fn decoded(&mut self, id: &str, photo: Decoded) {
        if let Some(picture) = &mut self.picture {
            picture.decoded(id, photo);
        }
    }
}

/// Whether a drawing keeps to itself: small, without entities, and naming nothing outside of it. What it names
/// would be read from the disk.
fn is_closed(bytes: &[u8]) -> bool {
    let Ok(text) = std::str::from_utf8(bytes) else { return false };
    let inside = |rest: &str| {
        let value = rest.trim_start().strip_prefix('=').map(str::trim_start);
        value.is_some_and(|v| v.starts_with("\"#") || v.starts_with("'#"))
    };
    bytes.len() <= MOST && only_comments(text) && text.split("href").skip(1).all(inside)
}

/// Whether every `<!` begins a comment.
fn only_comments(text: &str) -> bool {
    text.split("<!").skip(1).all(|rest| rest.starts_with("--"))
}

/// Draws the picture, or the sign where the renderer can make nothing of it.
struct Drawing<'a, M> {
    handle: Handle,
    missing: Element<'a, M>,
}

/// Width and height of a drawing, as its first `viewBox` says.
fn shape(drawing: &Handle) -> Option<Size> {
    let Data::Bytes(bytes) = drawing.data() else { return None };
    let text = std::str::from_utf8(bytes).ok()?;
    let numbers = text.split_once("viewBox=\"")?.1.split_once('"')?.0;
    let mut numbers = numbers.split([' ', ',']).filter(|n| !n.is_empty()).map(str::parse::<f32>).skip(2);
    let (width, height) = (numbers.next()?.ok()?, numbers.next()?.ok()?);
    (width > 0.0 && height > 0.0).then(|| Size::new(width, height))
}

/// As large as fits, in the middle.
fn contained(picture: Size, bounds: Rectangle) -> Rectangle {
    let scale = (bounds.width / picture.width).min(bounds.height / picture.height);
    let size = Size::new(picture.width * scale, picture.height * scale);
    let corner = bounds.center() - iced::Vector::new(size.width / 2.0, size.height / 2.0);
    Rectangle::new(corner, size)
}

impl<M> Widget<M, iced::Theme, iced::Renderer> for Drawing<'_, M> {
    fn size(&self) -> Size<Length> {
        Size::new(Length::Fill, Length::Fill)
    }

    fn children(&self) -> Vec<Tree> {
        vec![Tree::new(&self.missing)]
    }

    fn diff(&self, tree: &mut Tree) {
        tree.diff_children(std::slice::from_ref(&self.missing));
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        let size = limits.max();
        let Some(inner) = tree.children.first_mut() else { return layout::Node::new(size) };
        let node = self.missing.as_widget_mut().layout(inner, renderer, &layout::Limits::new(size, size));
        layout::Node::with_children(size, vec![node])
    }

    fn draw(
        &self,
        tree: &Tree,
        renderer: &mut iced::Renderer,
        theme: &iced::Theme,
        style: &renderer::Style,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        viewport: &Rectangle,
    ) {
        let bounds = layout.bounds();
        let picture = renderer.measure_svg(&self.handle);
        if picture.width == 0 || picture.height == 0 {
            if let (Some(inner), Some(place)) = (tree.children.first(), layout.children().next()) {
                self.missing.as_widget().draw(inner, renderer, theme, style, place, cursor, viewport);
            }
            return;
        }
        let size = Size::new(picture.width as f32, picture.height as f32);
        renderer.draw_svg(Svg::new(self.handle.clone()), contained(size, bounds), bounds);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_drawing_of_the_demo_lot_is_shown() {
        let bundle = Bundle::demo();
        let drawings = bundle.names().filter(|n| n.starts_with("assets/pictures/") && n.ends_with(".svg"));
        let mut count = 0;
        for name in drawings {
            let bytes = bundle.get(name).expect("it was listed");
            assert!(is_closed(bytes), "{name}");
            count += 1;
        }
        assert!(count > 0);
    }

    #[test]
    fn what_reaches_outside_is_not_shown() {
        for bad in [
            r#"<svg><image href="/etc/passwd"/></svg>"#,
            r#"<svg><image xlink:href = 'file:///x'/></svg>"#,
            r#"<!DOCTYPE svg [<!ENTITY a "b">]><svg/>"#,
        ] {
            assert!(!is_closed(bad.as_bytes()), "{bad}");
        }
        assert!(!is_closed(&[0xFF, 0xFE]));
        assert!(!is_closed(&vec![b' '; MOST + 1]));
        assert!(is_closed(br##"<svg><!-- a --><use href="#a"/></svg>"##));
    }

    #[test]
    fn a_picture_keeps_its_shape() {
        let bounds = Rectangle::new(iced::Point::new(10.0, 10.0), Size::new(400.0, 400.0));
        let found = contained(Size::new(400.0, 280.0), bounds);
        assert_eq!((found.x, found.y, found.width, found.height), (10.0, 70.0, 400.0, 280.0));
    }

    #[test]
    fn the_shape_of_a_drawing_is_the_one_it_is_drawn_in() {
        let bundle = Bundle::demo();
        let drawings = bundle.names().filter(|n| n.starts_with("assets/pictures/") && n.ends_with(".svg"));
        for name in drawings {
            let handle = Handle::from_memory(bundle.get(name).unwrap().to_vec());
            assert_eq!(shape(&handle), Some(Size::new(400.0, 280.0)), "{name}");
        }
        let other = |text: &str| shape(&Handle::from_memory(text.as_bytes().to_vec()));
        assert_eq!(other("<svg viewBox=\"0, 0, 30 20\"/>"), Some(Size::new(30.0, 20.0)));
        for bad in [
            "<svg/>",
            "<svg viewBox=\"0 0 30\"/>",
            "<svg viewBox=\"0 0 a 20\"/>",
            "<svg viewBox=\"0 0 0 0\"/>",
        ] {
            assert_eq!(other(bad), None, "{bad}");
        }
    }

    fn alone(picture: &Picture) -> Element<'_, ()> {
        let size = Size::new(400.0, 280.0);
        let look = Look::new(Theme::Paper, crate::kiosk::theme::TextSize::Usual, size, 2.0);
        picture.view(&look, "No picture".to_owned())
    }

    /// A picture alone in a window.
    fn drawn(bytes: &[u8]) -> Vec<u8> {
        let picture = Picture::Drawing(Handle::from_memory(bytes.to_vec()));
        let program = iced::application(move || picture.clone(), |_: &mut Picture, ()| {}, alone)
            .theme(|_: &Picture| iced::Theme::Light);
        crate::kiosk::headless::Driver::open(&program, (400, 280)).unwrap().render().rgba
    }

    #[test]
    fn a_broken_drawing_shows_the_sign_in_its_place() {
        let empty = drawn(br#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 280"></svg>"#);
        let whole = drawn(br#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4"><rect width="4" height="4"/></svg>"#);
        for broken in [&b"<svg"[..], b"", b"no drawing at all"] {
            let sign = drawn(broken);
            assert!(sign != empty && sign != whole, "{}", String::from_utf8_lossy(broken));
        }
    }
}

//! Pictures, decoded here and never by the toolkit: a broken file that reaches its renderer stops the program.

use std::io::Cursor;

use iced::widget::{column, container, image as raster, svg};
use iced::{Alignment, ContentFit, Length};
use image::{DynamicImage, GenericImageView as _, ImageDecoder, ImageFormat, ImageReader, Limits};

use crate::kiosk::theme::{Gap, Look, Theme, style};
use crate::kiosk::ui::{Element, Symbol, small, symbol};
use crate::source::jpeg_is_whole;

/// The largest file that is looked at: 32 MB.
pub const MOST_BYTES: usize = 32 << 20;
/// The most pixels that are decoded: 64 million.
pub const MOST_PIXELS: u64 = 64_000_000;

/// Why a picture cannot be shown.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PictureFault {
    /// The file is too large to be looked at.
    #[error("the picture has {0} bytes, more than {MOST_BYTES}; make it smaller")]
    TooManyBytes(usize),
    /// The picture has too many pixels.
    #[error("the picture is {0} by {1} pixels, more than {MOST_PIXELS} in all; make it smaller")]
    TooManyPixels(u32, u32),
    /// It is no PNG, JPEG or SVG.
    #[error("the picture is neither PNG, JPEG nor SVG; save it as one of these")]
    OtherKind,
    /// It is broken.
    #[error("the picture cannot be read ({0}); save it anew")]
    Broken(String),
}

/// A picture that is safe to show.
#[derive(Debug, Clone)]
pub enum Picture {
    /// Pixels.
    Raster(raster::Handle),
    /// Shapes. Letters in it must be paths: the renderer knows none of the bundled fonts there.
    Vector(svg::Handle),
}

/// Decodes a picture, turns it as its camera says, and makes it no larger than `side` pixels either way.
///
/// # Errors
/// The file is too large, of another kind, or broken.
pub fn decode(bytes: &[u8], side: u32) -> Result<Picture, PictureFault> {
    if bytes.len() > MOST_BYTES {
        return Err(PictureFault::TooManyBytes(bytes.len()));
    }
    if is_svg(bytes) {
        return Ok(Picture::Vector(svg::Handle::from_memory(bytes.to_vec())));
    }
    let Ok(format @ (ImageFormat::Png | ImageFormat::Jpeg)) = image::guess_format(bytes) else {
        return Err(PictureFault::OtherKind);
    };
    if format == ImageFormat::Jpeg && !jpeg_is_whole(bytes) {
        return Err(PictureFault::Broken("its end is missing".to_owned()));
    }
    let broken = |error: image::ImageError| PictureFault::Broken(error.to_string());
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_PIXELS * 8);
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(broken)?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(PictureFault::TooManyPixels(width, height));
    }
    let turned = decoder.orientation().map_err(broken)?;
    let mut picture = DynamicImage::from_decoder(decoder).map_err(broken)?;
    picture.apply_orientation(turned);
    let side = side.max(1);
    if picture.width().max(picture.height()) > side {
        picture = picture.thumbnail(side, side);
    }
    let (width, height) = picture.dimensions();
    if width == 0 || height == 0 {
        return Err(PictureFault::Broken("it has no pixels".to_owned()));
    }
    Ok(Picture::Raster(raster::Handle::from_rgba(width, height, picture.into_rgba8().into_raw())))
}

fn is_svg(bytes: &[u8]) -> bool {
    let head = bytes.get(..1024).unwrap_or(bytes);
    let text = String::from_utf8_lossy(head);
    let text = text.trim_start_matches('\u{feff}').trim_start();
    text.starts_with("<svg") || (text.starts_with("<?xml") && text.contains("<svg"))
}

/// Shows a picture as large as its space allows, or says with `missing` that there is none. Pictures are drawn
/// for paper, so they stand on paper in every theme.
pub fn show<'a, M: 'a>(look: &Look, picture: Option<&Picture>, missing: impl Into<String>) -> Element<'a, M> {
    let Some(picture) = picture else { return placeholder(look, missing.into()) };
    let paper = Theme::Paper.palette();
    let face: Element<'a, M> = match picture {
        Picture::Raster(handle) => raster(handle.clone())
            .width(Length::Fill)
            .height(Length::Fill)
            .content_fit(ContentFit::Contain)
            .into(),
        Picture::Vector(handle) => svg(handle.clone())
            .width(Length::Fill)
            .height(Length::Fill)
            .content_fit(ContentFit::Contain)
            .into(),
    };
    let ground = style::ground(look, paper.leaf, look.colors().line);
    container(face)
        .padding(look.gap(Gap::Small))
        .width(Length::Fill)
        .height(Length::Fill)
        .style(move |_| ground)
        .into()
}

fn placeholder<'a, M: 'a>(look: &Look, missing: String) -> Element<'a, M> {
    let colors = look.colors();
    let ground = style::ground(look, colors.wash, colors.line);
    let content = column![symbol(look, Symbol::NoPicture, 72.0), small(look, missing)]
        .spacing(look.gap(Gap::Small))
        .align_x(Alignment::Center);
    container(content).center(Length::Fill).padding(look.gap(Gap::Large)).style(move |_| ground).into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::{ImageEncoder as _, RgbImage};

    fn sample(width: u32, height: u32) -> RgbImage {
        RgbImage::from_fn(width, height, |x, y| {
            image::Rgb([x as u8, y as u8, if x < width / 2 { 0 } else { 255 }])
        })
    }

    fn png(width: u32, height: u32) -> Vec<u8> {
        let mut out = Vec::new();
        image::codecs::png::PngEncoder::new(&mut out)
            .write_image(&sample(width, height), width, height, image::ExtendedColorType::Rgb8)
            .unwrap();
        out
    }

    fn jpeg(width: u32, height: u32) -> Vec<u8> {
        let mut out = Vec::new();
        image::codecs::jpeg::JpegEncoder::new_with_quality(&mut out, 90)
            .encode_image(&sample(width, height))
            .unwrap();
        out
    }

    fn size(picture: &Picture) -> (u32, u32) {
        match picture {
            Picture::Raster(raster::Handle::Rgba { width, height, pixels, .. }) => {
                assert_eq!(pixels.len(), (*width * *height * 4) as usize);
                (*width, *height)
            }
            other => panic!("{other:?} is no raster"),
        }
    }

    #[test]
    fn a_large_picture_is_made_smaller() {
        assert_eq!(size(&decode(&png(400, 100), 200).unwrap()), (200, 50));
        assert_eq!(size(&decode(&jpeg(30, 20), 200).unwrap()), (30, 20));
    }

    /// Every length of a cut file gives a picture or a fault, and what is a picture can be rendered: a handle
    /// whose pixels do not fit its size would stop the renderer.
    #[test]
    fn a_cut_or_broken_picture_never_stops_the_program() {
        for whole in [png(40, 30), jpeg(40, 30)] {
            for length in 0..whole.len() {
                if let Ok(picture) = decode(&whole[..length], 100) {
                    let _ = size(&picture);
                }
            }
            for index in 0..whole.len() {
                let mut bent = whole.clone();
                bent[index] ^= 0x5A;
                if let Ok(picture) = decode(&bent, 100) {
                    let _ = size(&picture);
                }
            }
        }
        assert!(matches!(decode(&png(40, 30)[..60], 100), Err(PictureFault::Broken(_))));
        assert_eq!(decode(b"GIF89a", 100).unwrap_err(), PictureFault::OtherKind);
        assert_eq!(decode(b"", 100).unwrap_err(), PictureFault::OtherKind);
    }

    /// A JPEG of four colored quarters, red and green above blue and white, with an orientation in its EXIF.
    fn turned(orientation: u8) -> Vec<u8> {
        let quarters = RgbImage::from_fn(40, 20, |x, y| match (x < 20, y < 10) {
            (true, true) => image::Rgb([255, 0, 0]),
            (false, true) => image::Rgb([0, 255, 0]),
            (true, false) => image::Rgb([0, 0, 255]),
            (false, false) => image::Rgb([255, 255, 255]),
        });
        let mut plain = Vec::new();
        image::codecs::jpeg::JpegEncoder::new_with_quality(&mut plain, 100).encode_image(&quarters).unwrap();
        let exif: &[u8] = &[
            0xFF,
            0xE1,
            0x00,
            0x22,
            b'E',
            b'x',
            b'i',
            b'f',
            0,
            0,
            b'M',
            b'M',
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            orientation,
            0,
            0,
            0,
            0,
            0,
            0,
        ];
        [&plain[..2], exif, &plain[2..]].concat()
    }

    /// Colors of the quarters: above left, above right, below left, below right.
    fn quarters(picture: &Picture) -> String {
        let Picture::Raster(raster::Handle::Rgba { width, height, pixels, .. }) = picture else {
            panic!("{picture:?} is no raster")
        };
        let at = |x: u32, y: u32| {
            let start = ((y * width + x) * 4) as usize;
            match &pixels[start..start + 3] {
                [r, g, b] if *r > 200 && *g > 200 && *b > 200 => 'W',
                [r, g, b] if *r > 200 && *g < 60 && *b < 60 => 'R',
                [r, g, b] if *g > 200 && *r < 60 && *b < 60 => 'G',
                [r, g, b] if *b > 200 && *r < 60 && *g < 60 => 'B',
                other => panic!("no color of a quarter: {other:?}"),
            }
        };
        let (left, right, above, below) = (width / 4, width * 3 / 4, height / 4, height * 3 / 4);
        [at(left, above), at(right, above), at(left, below), at(right, below)].iter().collect()
    }

    /// TIFF 6.0, tag 274 (Orientation), which EXIF takes over: where the first row and the first column of what is
    /// stored are to be seen. 1 top and left, 2 top and right, 3 bottom and right, 4 bottom and left, 5 left and
    /// top, 6 right and top, 7 right and bottom, 8 left and bottom.
    #[test]
    fn a_picture_is_turned_as_its_camera_says() {
        for (orientation, seen) in [
            (1, "RGBW"),
            (2, "GRWB"),
            (3, "WBGR"),
            (4, "BWRG"),
            (5, "RBGW"),
            (6, "BRWG"),
            (7, "WGBR"),
            (8, "GWRB"),
        ] {
            let picture = decode(&turned(orientation), 100).unwrap();
            assert_eq!(quarters(&picture), seen, "orientation {orientation}");
            let wide = if orientation < 5 { (40, 20) } else { (20, 40) };
            assert_eq!(size(&picture), wide, "orientation {orientation}");
        }
        // An orientation that there is not leaves the picture as it is stored.
        assert_eq!(quarters(&decode(&turned(9), 100).unwrap()), "RGBW");
    }

    /// A JPEG whose frame header promises 65,500 by 65,500 pixels.
    #[test]
    fn a_photo_that_promises_too_much_is_refused() {
        let mut bomb = jpeg(40, 20);
        let frame = bomb.windows(2).position(|w| w == [0xFF, 0xC0]).unwrap();
        bomb[frame + 5..frame + 7].copy_from_slice(&65_500u16.to_be_bytes());
        bomb[frame + 7..frame + 9].copy_from_slice(&65_500u16.to_be_bytes());
        assert_eq!(decode(&bomb, 100).unwrap_err(), PictureFault::TooManyPixels(65_500, 65_500));
    }

    /// A PNG of 100,000 by 100,000 pixels by its header alone is refused before anything is allocated.
    #[test]
    fn a_header_that_promises_too_much_is_refused() {
        let mut bomb = png(40, 30);
        bomb[16..20].copy_from_slice(&100_000u32.to_be_bytes());
        bomb[20..24].copy_from_slice(&100_000u32.to_be_bytes());
        let crc = crc32fast::hash(&bomb[12..29]);
        bomb[29..33].copy_from_slice(&crc.to_be_bytes());
        assert!(matches!(
            decode(&bomb, 100),
            Err(PictureFault::TooManyPixels(100_000, 100_000) | PictureFault::Broken(_))
        ));
    }

    #[test]
    fn vectors_are_known_by_their_beginning() {
        assert!(matches!(decode(b"<svg xmlns='http://www.w3.org/2000/svg'/>", 10), Ok(Picture::Vector(_))));
        assert!(matches!(decode(b"\xEF\xBB\xBF<?xml version='1.0'?><svg/>", 10), Ok(Picture::Vector(_))));
    }
}

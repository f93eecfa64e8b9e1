//! `index.html`: what it asks for, and how it looks when the files have their final names.
//!
//! The links marked `data-trunk` are the ones that Trunk understands: css, rust, copy-file,
//! copy-dir, and scripts. Anything else marked so is refused, because it would be left out.

use anyhow::{Context, Result, bail};
use quick_xml::events::{BytesStart, Event};
use quick_xml::{Reader, Writer};

use crate::precache::worker_link;

/// Something that the page is made of. Paths are relative to `index.html`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Asset {
    /// A style sheet; all of them become one, in this order.
    Style { href: String },
    /// A script, copied under a hashed name.
    Script { src: String },
    /// The program of the page: manifest of its package, name of the binary.
    Rust { manifest: String, bin: String },
    /// A program that computes in a Web Worker, with a script that starts it there. Its link stays in the page as
    /// `rel="worker"`, which browsers pass over, so that the app finds the file names.
    Worker { manifest: String, bin: String },
    /// A file copied under its own name.
    File { href: String },
    /// A folder copied under its own name.
    Folder { href: String },
}

/// What the page asks for, in the order of the page.
pub(super) fn assets(html: &str) -> Result<Vec<Asset>> {
    let mut found = Vec::new();
    each_event(html, |event| {
        if let Some(tag) = opening(event)
            && let Some(asset) = asset(tag)?
        {
            found.push(asset);
        }
        Ok(())
    })?;
    Ok(found)
}

/// The page with the one style sheet `css` and the files in `made` in place of what it asked
/// for; without comments.
pub(super) fn rewrite(html: &str, css: &str, made: &[(Asset, Vec<String>)]) -> Result<String> {
    let mut writer = Writer::new(Vec::new());
    let mut is_styled = false;
    each_event(html, |event| {
        if matches!(event, Event::Comment(_)) {
            return Ok(());
        }
        let asset = opening(event).map(asset).transpose()?.flatten();
        let Some(asset) = asset else {
            writer.write_event(event.borrow())?;
            return Ok(());
        };
        let names =
            made.iter().find(|(known, _)| *known == asset).map(|(_, names)| names.as_slice());
        let tags = match (&asset, names) {
            (Asset::Style { .. }, _) if is_styled => String::new(),
            (Asset::Style { .. }, _) => {
                is_styled = true;
                format!("<link rel=\"stylesheet\" href=\"./{css}\">")
            }
            (Asset::Script { .. }, Some([script])) => {
                format!("<script type=\"module\" src=\"./{script}\">")
            }
            (Asset::Rust { .. }, Some([script, wasm])) => format!(
                "<link rel=\"modulepreload\" href=\"./{script}\">\n\
                 <link rel=\"preload\" href=\"./{wasm}\" as=\"fetch\" type=\"application/wasm\" crossorigin>"
            ),
            (Asset::Worker { .. }, Some([script, wasm, loader])) => {
                worker_link(script, wasm, loader)
            }
            (Asset::File { .. } | Asset::Folder { .. }, _) => String::new(),
            (Asset::Script { .. } | Asset::Rust { .. } | Asset::Worker { .. }, _) => {
                bail!("nothing was built for {asset:?}")
            }
        };
        writer.get_mut().extend_from_slice(tags.as_bytes());
        Ok(())
    })?;
    let text = String::from_utf8(writer.into_inner())?;
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    Ok(lines.collect::<Vec<_>>().join("\n") + "\n")
}

fn each_event(html: &str, mut see: impl FnMut(&Event) -> Result<()>) -> Result<()> {
    let mut reader = Reader::from_str(html);
    let config = reader.config_mut();
    // HTML, not XML: `<meta>` and `<link>` are never closed.
    config.check_end_names = false;
    config.allow_unmatched_ends = true;
    config.allow_dangling_amp = true;
    loop {
        match reader.read_event().context("reading index.html")? {
            Event::Eof => return Ok(()),
            event => see(&event)?,
        }
    }
}

fn opening<'a>(event: &'a Event<'a>) -> Option<&'a BytesStart<'a>> {
    match event {
        Event::Start(tag) | Event::Empty(tag) => Some(tag),
        _ => None,
    }
}

fn asset(tag: &BytesStart) -> Result<Option<Asset>> {
    let mut values = Vec::new();
    for attribute in tag.html_attributes() {
        let attribute = attribute.context("an attribute in index.html")?;
        let name = String::from_utf8_lossy(attribute.key.as_ref()).into_owned();
        values.push((name, String::from_utf8_lossy(&attribute.value).into_owned()));
    }
    let value = |name: &str| values.iter().find(|(n, _)| n == name).map(|(_, v)| v.clone());
    if value("data-trunk").is_none() {
        return Ok(None);
    }
    let needed = |name: &str| {
        value(name)
            .with_context(|| format!("a data-trunk tag in index.html has no {name}: {values:?}"))
    };
    if tag.name().as_ref() == b"script" {
        return Ok(Some(Asset::Script { src: needed("src")? }));
    }
    let href = needed("href")?;
    Ok(Some(match needed("rel")?.as_str() {
        "css" => Asset::Style { href },
        "rust" => {
            let bin = needed("data-bin")?;
            match value("data-type").as_deref() {
                None | Some("main") => Asset::Rust { manifest: href, bin },
                Some("worker") => {
                    if value("data-loader-shim").is_none() {
                        bail!("index.html: {bin} has no data-loader-shim, so nothing starts it");
                    }
                    Asset::Worker { manifest: href, bin }
                }
                Some(other) => bail!("index.html: xtask does not know data-type=\"{other}\""),
            }
        }
        "copy-file" => Asset::File { href },
        "copy-dir" => Asset::Folder { href },
        other => bail!("index.html: xtask does not know data-trunk rel=\"{other}\""),
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = r#"<!DOCTYPE html>
<html><head><!-- why -->
<meta charset="utf-8">
<link data-trunk rel="css" href="styles/a.css">
<link data-trunk rel="css" href="styles/b.css">
<link data-trunk rel="rust" href="src/app/Cargo.toml" data-bin="app">
<link data-trunk rel="copy-dir" href="static/icons">
<script data-trunk type="module" src="static/boot.js"></script>
</head><body><p hidden>rails & legs</p></body></html>"#;

    #[test]
    fn the_page_lists_its_parts_in_order() {
        let found = assets(PAGE).expect("a page");
        assert_eq!(found.len(), 5, "{found:?}");
        assert_eq!(found[0], Asset::Style { href: "styles/a.css".into() });
        assert_eq!(
            found[2],
            Asset::Rust { manifest: "src/app/Cargo.toml".into(), bin: "app".into() }
        );
    }

    #[test]
    fn the_final_page_names_the_built_files_and_nothing_of_the_sources() {
        let found = assets(PAGE).expect("a page");
        let made = [
            (found[2].clone(), vec!["app-1.js".to_owned(), "app-2.wasm".to_owned()]),
            (found[4].clone(), vec!["boot-3.js".to_owned()]),
        ];
        let page = rewrite(PAGE, "style-4.css", &made).expect("a page");
        let expected = r#"<!DOCTYPE html>
<html><head>
<meta charset="utf-8">
<link rel="stylesheet" href="./style-4.css">
<link rel="modulepreload" href="./app-1.js">
<link rel="preload" href="./app-2.wasm" as="fetch" type="application/wasm" crossorigin>
<script type="module" src="./boot-3.js"></script>
</head><body><p hidden>rails & legs</p></body></html>
"#;
        assert_eq!(page, expected);
    }

    #[test]
    fn a_worker_is_named_in_the_page_and_not_loaded_with_it() {
        let link =
            r#"<link data-trunk rel="rust" href="w/Cargo.toml" data-bin="w" data-type="worker""#;
        let page = format!("{link} data-loader-shim>");
        let found = assets(&page).expect("a page");
        assert_eq!(found, [Asset::Worker { manifest: "w/Cargo.toml".into(), bin: "w".into() }]);
        let names = ["w-1.js", "w-2.wasm", "w-3.js"].map(str::to_owned).to_vec();
        let page = rewrite(&page, "style.css", &[(found[0].clone(), names)]).expect("a page");
        assert_eq!(
            page.trim(),
            r#"<link rel="worker" href="./w-1.js" data-wasm="./w-2.wasm" data-loader="./w-3.js">"#
        );
        assert!(assets(&format!("{link}>")).is_err(), "nothing would start it");
    }

    #[test]
    fn an_unknown_kind_of_asset_is_refused_not_dropped() {
        let error = assets(r#"<link data-trunk rel="sass" href="a.scss">"#).expect_err("refused");
        assert!(error.to_string().contains("sass"), "{error}");
    }
}

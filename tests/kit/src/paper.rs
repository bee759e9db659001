//! PDFs read back with a library that has nothing to do with the typesetter.

use std::path::Path;

use lopdf::{Dictionary, Document, Object};

/// A PDF read back.
pub struct Paper {
    document: Document,
}

impl Paper {
    /// Reads a file.
    pub fn open(path: &Path) -> Result<Paper, String> {
        Document::load(path).map(|document| Paper { document }).map_err(|e| format!("{}: {e}", path.display()))
    }

    /// Width and height of every page, in points.
    pub fn sizes(&self) -> Vec<(f64, f64)> {
        let number = |o: &Object| o.as_float().map(f64::from).or_else(|_| o.as_i64().map(|i| i as f64)).unwrap_or(0.0);
        let pages = self.document.get_pages();
        pages
            .values()
            .filter_map(|id| self.document.get_dictionary(*id).ok())
            .filter_map(|page| self.inherited(page, b"MediaBox"))
            .filter_map(|b| b.as_array().ok().map(|a| a.iter().map(number).collect::<Vec<_>>()))
            .filter(|b| b.len() == 4)
            .map(|b| (b[2] - b[0], b[3] - b[1]))
            .collect()
    }

    fn inherited<'a>(&'a self, page: &'a Dictionary, key: &[u8]) -> Option<&'a Object> {
        if let Ok(found) = page.get_deref(key, &self.document) {
            return Some(found);
        }
        let parent = page.get_deref(b"Parent", &self.document).ok()?.as_dict().ok()?;
        self.inherited(parent, key)
    }

    /// Text of a page, from 1, without white space: where a line breaks is layout.
    pub fn bare_text(&self, page: u32) -> String {
        let text = self.document.extract_text(&[page]).unwrap_or_default();
        bare(&text)
    }

    /// Language of the document.
    pub fn language(&self) -> Option<String> {
        let lang = self.document.catalog().ok()?.get_deref(b"Lang", &self.document).ok()?.as_str().ok()?;
        String::from_utf8(lang.to_vec()).ok()
    }

    /// True if the metadata claims the accessibility standard PDF/UA, part 1.
    pub fn claims_ua_1(&self) -> bool {
        let stream =
            self.document.catalog().ok().and_then(|c| c.get_deref(b"Metadata", &self.document).ok()).and_then(|m| m.as_stream().ok());
        let xmp = stream.map(|s| s.decompressed_content().unwrap_or_else(|_| s.content.clone())).unwrap_or_default();
        let xmp = String::from_utf8_lossy(&xmp).into_owned();
        xmp.contains("pdfuaid:part>1<") || xmp.contains("pdfuaid:part=\"1\"")
    }

    /// The bytes of the file attached under a name.
    pub fn attached(&self, name: &str) -> Option<Vec<u8>> {
        self.document.objects.values().filter_map(|o| o.as_dict().ok()).find_map(|spec| {
            let own = spec.get(b"UF").or_else(|_| spec.get(b"F")).ok()?.as_str().ok()?;
            let text: String = own.iter().filter(|b| b.is_ascii_graphic()).map(|b| char::from(*b)).collect();
            if !text.ends_with(name) {
                return None;
            }
            let files = spec.get_deref(b"EF", &self.document).ok()?.as_dict().ok()?;
            let stream = files.get_deref(b"F", &self.document).ok()?.as_stream().ok()?;
            Some(stream.decompressed_content().unwrap_or_else(|_| stream.content.clone()))
        })
    }
}

/// Text without white space and without the marks that only steer line breaks.
pub fn bare(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace() && !matches!(c, '\u{ad}' | '\u{2060}' | '\u{200b}')).collect()
}

//! The files of the project, read once and shown to every check.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Folders that hold what is made from the project, not the project.
const MADE: [&str; 4] = ["target", "corpus", "artifacts", "node_modules"];
/// Hidden entries that belong to the project.
const HIDDEN_BUT_OURS: [&str; 4] = [".cargo", ".ci", ".github", ".gitignore"];

/// The files of the project by path from its root, with `/` between folders.
pub struct Project {
    texts: BTreeMap<String, Option<String>>,
}

/// A file of text.
#[derive(Clone, Copy)]
pub struct File<'a> {
    /// The path from the root of the project.
    pub path: &'a str,
    /// What stands in it.
    pub text: &'a str,
}

impl File<'_> {
    /// The lines, counted from 1.
    pub fn numbered_lines(&self) -> impl Iterator<Item = (usize, &str)> {
        self.text.lines().enumerate().map(|(index, line)| (index + 1, line))
    }
}

/// The root of the project that this program was built from.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

impl Project {
    /// Reads the project below a folder.
    pub fn read(root: &Path) -> io::Result<Self> {
        let mut texts = BTreeMap::new();
        read_folder(root, "", &mut texts)?;
        Ok(Self { texts })
    }

    /// A project made of these files, for tests.
    #[cfg(test)]
    pub fn of(files: &[(&str, &str)]) -> Self {
        Self { texts: files.iter().map(|(path, text)| ((*path).into(), Some((*text).into()))).collect() }
    }

    /// Every file of text, by path.
    pub fn files(&self) -> impl Iterator<Item = File<'_>> {
        self.texts.iter().filter_map(|(path, text)| Some(File { path, text: text.as_deref()? }))
    }

    /// Every Rust file, by path.
    pub fn rust_files(&self) -> impl Iterator<Item = File<'_>> {
        self.files().filter(|file| file.path.ends_with(".rs"))
    }

    /// The file of text at this path.
    pub fn file(&self, path: &str) -> Option<File<'_>> {
        let (path, text) = self.texts.get_key_value(path)?;
        Some(File { path, text: text.as_deref()? })
    }

    /// Whether there is a file at this path, of text or not.
    pub fn has_file(&self, path: &str) -> bool {
        self.texts.contains_key(path)
    }

    /// Whether there is a folder at this path.
    pub fn has_folder(&self, path: &str) -> bool {
        let inside = format!("{}/", path.trim_end_matches('/'));
        path.is_empty() || self.texts.keys().any(|file| file.starts_with(&inside))
    }
}

fn read_folder(folder: &Path, path: &str, texts: &mut BTreeMap<String, Option<String>>) -> io::Result<()> {
    // Cargo marks the folders it builds in so, whatever they are called.
    if folder.join("CACHEDIR.TAG").exists() {
        return Ok(());
    }
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        let hidden = name.starts_with('.') && !HIDDEN_BUT_OURS.contains(&name.as_str());
        if hidden || MADE.contains(&name.as_str()) {
            continue;
        }
        let path = if path.is_empty() { name } else { format!("{path}/{name}") };
        if entry.file_type()?.is_dir() {
            read_folder(&entry.path(), &path, texts)?;
        } else {
            texts.insert(path, String::from_utf8(fs::read(entry.path())?).ok());
        }
    }
    Ok(())
}

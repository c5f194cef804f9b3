//! Files: found, loaded within limits, and written whole or not at all.

use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use super::text::{did_you_mean, quote};
use super::{Fault, Format, LARGEST};

/// Loads the bytes of a file and tells its format from its ending.
pub(super) fn load(path: &Path) -> Result<(Vec<u8>, Format), Fault> {
    let shown = quote(&path.display().to_string());
    if path.is_dir() {
        return Err(Fault::new("directory", format!("{shown} is a directory"))
            .with_help("name a file in it"));
    }
    // Asked before opening: a pipe would keep us waiting.
    if std::fs::metadata(path).is_ok_and(|found| !found.is_file()) {
        return Err(Fault::new(
            "unreadable",
            format!("{shown} is no plain file"),
        ));
    }
    let file = std::fs::File::open(path).map_err(|error| cannot_open(path, &shown, &error))?;
    let format = format_of(path).ok_or_else(|| {
        Fault::new(
            "unknown-format",
            format!("can't tell the format of {shown}"),
        )
        .with_help("the name must end in .yaml, .yml, .json or .csv")
    })?;
    let mut bytes = Vec::new();
    // One byte over the limit tells that the file is too large without reading all of it.
    let read = file.take(LARGEST as u64 + 1).read_to_end(&mut bytes);
    read.map_err(|error| unreadable(&shown, &error))?;
    if bytes.len() > LARGEST {
        let length = std::fs::metadata(path).map_or(bytes.len() as u64, |m| m.len());
        let name = super::clean(&path.display().to_string());
        return Err(Fault::too_large(&name, length.max(bytes.len() as u64)));
    }
    Ok((bytes, format))
}

fn format_of(path: &Path) -> Option<Format> {
    let ending = path.extension()?.to_str()?.to_ascii_lowercase();
    match ending.as_str() {
        "yaml" | "yml" => Some(Format::Yaml),
        "json" => Some(Format::Json),
        "csv" => Some(Format::Csv),
        _ => None,
    }
}

fn unreadable(shown: &str, error: &io::Error) -> Fault {
    Fault::new("unreadable", format!("can't read {shown}: {error}"))
}

fn cannot_open(path: &Path, shown: &str, error: &io::Error) -> Fault {
    if error.kind() != io::ErrorKind::NotFound {
        return unreadable(shown, error);
    }
    let fault = Fault::new("no-such-file", format!("there is no file {shown}"));
    match neighbour(path) {
        Some(help) => fault.with_help(help),
        None => fault,
    }
}

/// The file of the same directory whose name is nearest.
fn neighbour(path: &Path) -> Option<String> {
    let directory = match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    let Ok(entries) = std::fs::read_dir(directory) else {
        let shown = quote(&directory.display().to_string());
        return Some(format!("there is no directory {shown} either"));
    };
    let mut names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .map(|name| super::clean(&name))
        .collect();
    names.sort();
    did_you_mean(
        path.file_name()?.to_str()?,
        names.iter().map(String::as_str),
    )
}

/// The `.yaml`, `.yml` and `.json` files of a folder in the order of their names; folders inside it are left alone.
///
/// # Errors
/// Whatever the file system says.
pub fn yaml_and_json_in(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        let wanted = matches!(format_of(&path), Some(Format::Yaml | Format::Json));
        if wanted && !path.is_dir() {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

/// Writes a file whole or not at all: into a new file beside it, which then takes its name. A link stays one: what it points
/// to is written. Only plain files that may be written are replaced, never a device, a pipe or a directory.
///
/// # Errors
/// Whatever the file system says; the old file is then as it was.
pub fn write_atomically(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let real = std::fs::canonicalize(path);
    let path = real.as_deref().unwrap_or(path);
    if let Ok(old) = std::fs::metadata(path) {
        let refused = |why| io::Error::new(io::ErrorKind::PermissionDenied, why);
        if !old.is_file() {
            return Err(refused("it is no plain file"));
        }
        if old.permissions().readonly() {
            return Err(refused("it may only be read"));
        }
    }
    let directory = match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    if !directory.is_dir() {
        let why = format!(
            "there is no directory {}",
            quote(&directory.display().to_string())
        );
        return Err(io::Error::new(io::ErrorKind::NotFound, why));
    }
    // The name of the new file says nothing to anybody.
    let mut file = tempfile::NamedTempFile::new_in(directory).map_err(|error| {
        io::Error::new(error.kind(), "nothing can be written into its directory")
    })?;
    file.write_all(bytes)?;
    // A temporary file is private; the written file has the rights of the one it replaces, or those of any new file.
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let rights = match std::fs::metadata(path) {
            Ok(old) => old.permissions(),
            Err(_) => std::fs::Permissions::from_mode(0o644),
        };
        file.as_file().set_permissions(rights)?;
    }
    file.as_file().sync_all()?;
    file.persist(path).map_err(|error| error.error)?;
    Ok(())
}

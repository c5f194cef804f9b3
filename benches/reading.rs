//! How long reading the rules and the demonstration world takes: into the placed tree, and by the same crates without places.
//!
//! The second is the reference: what anyone pays who reads the same bytes with `serde_yaml` and `csv` alone.

use std::hint::black_box;
use std::path::{Path, PathBuf};

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use spanwright::advice::Shop;
use spanwright::document::{Document, Format};

/// All files under a folder, in order of name.
fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return;
    };
    let mut paths: Vec<PathBuf> = entries.filter_map(|e| Some(e.ok()?.path())).collect();
    paths.sort();
    for path in paths {
        if path.is_dir() {
            files(&path, found);
        } else {
            found.push(path);
        }
    }
}

fn load() -> Vec<(String, Vec<u8>, Format)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut paths = Vec::new();
    files(&root.join("rules"), &mut paths);
    files(&root.join("catalog-demo"), &mut paths);
    let read = |path: PathBuf| {
        let format = match path.extension()?.to_str()? {
            "yaml" => Format::Yaml,
            "csv" => Format::Csv,
            _ => return None,
        };
        Some((
            path.display().to_string(),
            std::fs::read(&path).ok()?,
            format,
        ))
    };
    paths.into_iter().filter_map(read).collect()
}

fn without_places(bytes: &[u8], format: Format) -> usize {
    match format {
        Format::Csv => csv::Reader::from_reader(bytes).records().flatten().count(),
        _ => {
            let value: Result<serde_yaml::Value, _> = serde_yaml::from_slice(bytes);
            usize::from(black_box(value).is_ok())
        }
    }
}

fn reading(criterion: &mut Criterion) {
    let files = load();
    let mut group = criterion.benchmark_group("reading");
    let bytes: usize = files.iter().map(|(_, bytes, _)| bytes.len()).sum();
    group.throughput(Throughput::Bytes(bytes as u64));
    group.bench_function("placed tree", |bencher| {
        bencher.iter(|| {
            for (name, bytes, format) in &files {
                let document = Document::parse(name, bytes, *format);
                assert!(document.is_ok(), "{name} is broken");
                black_box(&document);
            }
        });
    });
    group.bench_function("without places", |bencher| {
        bencher.iter(|| {
            for (_, bytes, format) in &files {
                black_box(without_places(bytes, *format));
            }
        });
    });
    group.finish();
}

/// Everything a shop needs to open: the built-in rules and the catalog, read, checked and compiled, against a plain parse of
/// the same bytes. Wanted: at most three times.
fn opening(criterion: &mut Criterion) {
    let files: Vec<_> = load()
        .into_iter()
        .filter(|(name, ..)| !name.contains("bowlers"))
        .collect();
    let mut group = criterion.benchmark_group("opening");
    group.bench_function("shop", |bencher| {
        bencher.iter(|| black_box(Shop::demo().is_ok()))
    });
    group.bench_function("plain parse of the same bytes", |bencher| {
        bencher.iter(|| {
            for (_, bytes, format) in &files {
                black_box(without_places(bytes, *format));
            }
        });
    });
    group.finish();
}

criterion_group!(benches, reading, opening);
criterion_main!(benches);

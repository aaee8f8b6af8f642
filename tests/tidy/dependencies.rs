//! Nothing that lentic is built from opens a connection.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

use crate::tree;

/// Crates that speak to networks, and the runtimes and bindings below them.
const NETWORK: &[&str] = &[
    "async-std",
    "attohttpc",
    "curl",
    "curl-sys",
    "git2",
    "h2",
    "hickory-proto",
    "hyper",
    "isahc",
    "minreq",
    "mio",
    "native-tls",
    "openssl",
    "openssl-sys",
    "quinn",
    "reqwest",
    "rustls",
    "smol",
    "socket2",
    "ssh2",
    "surf",
    "tiny_http",
    "tokio",
    "tonic",
    "tungstenite",
    "ureq",
    "websocket",
];

/// Every package of a lock file, those of other systems and of the tests with them.
fn locked(path: &str) -> Vec<String> {
    let lock: toml::Table = tree::text(&tree::root().join(path)).parse().expect("TOML");
    let packages = lock["package"].as_array().expect("packages");
    let name = |package: &toml::Value| package["name"].as_str().map(str::to_owned);
    packages.iter().filter_map(name).collect()
}

/// The lock files of the project; the package leaves out that of the search for inputs.
fn locks() -> Vec<&'static str> {
    let fuzz = (!tree::is_packed()).then_some("tests/fuzz/Cargo.lock");
    ["Cargo.lock"].into_iter().chain(fuzz).collect()
}

#[test]
fn no_dependency_speaks_to_a_network() {
    for path in locks() {
        let locked = locked(path);
        assert!(locked.iter().any(|name| name == "serde"), "{path}");
        for name in NETWORK {
            assert!(!locked.iter().any(|found| found == name), "{path}: {name}");
        }
    }
}

/// What opens a connection, in the standard library and below it.
const SOCKETS: [&str; 7] = [
    "TcpStream",
    "TcpListener",
    "UdpSocket",
    "UnixStream",
    "UnixDatagram",
    "AF_INET",
    "SOCK_STREAM",
];
/// What the system offers is written down in these, sockets with the rest.
const BINDINGS: [&str; 3] = ["libc", "linux-raw-sys", "rustix"];
/// Its thread is woken through a pair of ends that both stay within the command.
const WAKING: &str = "signal-hook";

/// A package that the command is built from on this system.
struct Built {
    name: String,
    folder: PathBuf,
    features: Vec<String>,
}

/// What cargo says of the project and everything that it is built from.
fn metadata() -> Value {
    let output = Command::new(env!("CARGO"))
        .current_dir(tree::root())
        .args(["metadata", "--format-version", "1", "--offline", "--locked"])
        .args(["--filter-platform", &host()])
        .output()
        .expect("cargo");
    serde_json::from_slice(&output.stdout).unwrap_or_else(|_| panic!("{output:?}"))
}

/// The system that this is built on.
fn host() -> String {
    let output = Command::new("rustc").arg("-vV").output().expect("rustc");
    let text = String::from_utf8(output.stdout).expect("text");
    let host = text.lines().find_map(|line| line.strip_prefix("host: "));
    host.expect("a host").to_owned()
}

/// Every package below the project itself, but for those of the tests.
fn built_from() -> Vec<Built> {
    let metadata = metadata();
    let by_id = |list: &Value| -> BTreeMap<String, Value> {
        let items = list.as_array().expect("a list").iter();
        let keyed =
            items.map(|item| (item["id"].as_str().expect("an id").to_owned(), item.clone()));
        keyed.collect()
    };
    let nodes = by_id(&metadata["resolve"]["nodes"]);
    let root = metadata["resolve"]["root"].as_str().expect("a root");
    let mut reached = BTreeSet::new();
    let mut open = vec![root.to_owned()];
    while let Some(id) = open.pop() {
        if !reached.insert(id.clone()) {
            continue;
        }
        let below = nodes[&id]["deps"].as_array().expect("dependencies").iter();
        let is_built = |kind: &Value| kind["kind"].as_str() != Some("dev");
        let built = below.filter(|dep| {
            dep["dep_kinds"]
                .as_array()
                .expect("kinds")
                .iter()
                .any(is_built)
        });
        open.extend(built.map(|dep| dep["pkg"].as_str().expect("an id").to_owned()));
    }
    reached.remove(root);
    let packages = by_id(&metadata["packages"]);
    let built = |id: &String| {
        let manifest = packages[id]["manifest_path"].as_str().expect("a path");
        let features = nodes[id]["features"].as_array().expect("features").iter();
        Built {
            name: packages[id]["name"].as_str().expect("a name").to_owned(),
            folder: Path::new(manifest).parent().expect("a folder").to_owned(),
            features: features
                .map(|feature| feature.as_str().expect("a feature").to_owned())
                .collect(),
        }
    };
    reached.iter().map(built).collect()
}

/// Whether a source file uses a word outside its comments.
fn uses(path: &Path, words: &[&str]) -> bool {
    // A few files of other crates are not UTF-8 throughout.
    let bytes = std::fs::read(path).expect("a source file");
    let text = String::from_utf8_lossy(&bytes);
    let code = text
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"));
    let mut parts = code.flat_map(|line| line.split(|c: char| !(c.is_alphanumeric() || c == '_')));
    parts.any(|part| words.contains(&part))
}

/// A new dependency is read as well: its name need not be known here.
#[test]
fn no_source_of_any_dependency_opens_a_socket() {
    let built = built_from();
    assert!(built.iter().any(|package| package.name == "serde_json"));
    let mut bindings = 0;
    for package in &built {
        let src = package.folder.join("src");
        let folder = if src.is_dir() { &src } else { &package.folder };
        let sources = tree::below(folder, "rs");
        let opens = sources.iter().any(|path| uses(path, &SOCKETS));
        let name = package.name.as_str();
        let is_known = BINDINGS.contains(&name) || name == WAKING;
        assert!(!opens || is_known, "{name} names a socket");
        bindings += usize::from(opens);
        let net = package.features.iter().any(|feature| feature == "net");
        assert!(!net, "{} is built with its network", package.name);
    }
    // The search itself has to find what it is for.
    assert!(bindings > 0);
}

#[test]
fn no_source_names_a_socket_or_starts_a_program() {
    for path in tree::files("src", "rs") {
        assert!(!uses(&path, &SOCKETS), "{}", tree::short(&path));
        let text = tree::text(&path);
        for word in [
            "std::net",
            "net::",
            "std::process::Command",
            "process::Command",
        ] {
            assert!(!text.contains(word), "{} names {word}", tree::short(&path));
        }
    }
}

#[test]
fn the_library_alone_has_no_crate_of_the_command_line() {
    let output = Command::new(env!("CARGO"))
        .current_dir(tree::root())
        .args(["tree", "--offline", "--locked", "--edges", "normal,build"])
        .args([
            "--no-default-features",
            "--prefix",
            "none",
            "--format",
            "{p}",
        ])
        .output()
        .expect("cargo");
    let names = String::from_utf8_lossy(&output.stdout);
    assert!(names.contains("serde_json"), "{output:?}");
    for name in [
        "clap",
        "clap_complete",
        "clap_mangen",
        "anstream",
        "terminal_size",
        "tempfile",
    ] {
        let found = names
            .lines()
            .any(|line| line.split(' ').next() == Some(name));
        assert!(!found, "{name}");
    }
}

//! Nothing that lentic is built from opens a connection.

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

#[test]
fn no_dependency_speaks_to_a_network() {
    for path in ["Cargo.lock", "tests/fuzz/Cargo.lock"] {
        let locked = locked(path);
        assert!(locked.iter().any(|name| name == "serde"), "{path}");
        for name in NETWORK {
            assert!(!locked.iter().any(|found| found == name), "{path}: {name}");
        }
    }
}

#[test]
fn no_source_names_a_socket() {
    for path in tree::files("src", "rs") {
        let text = tree::text(&path);
        for word in ["std::net", "TcpStream", "UdpSocket", "UnixStream"] {
            assert!(!text.contains(word), "{} names {word}", tree::short(&path));
        }
    }
}

#[test]
fn the_library_alone_has_no_crate_of_the_command_line() {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = std::process::Command::new(cargo)
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

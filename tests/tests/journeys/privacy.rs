//! Nothing leaves the page's own origin.

use reckoner_e2e::{App, Browser, Screen, Server, release};

/// Chromium looks for its own updates and accounts, whatever page is open.
const BROWSERS_OWN: [&str; 2] = [".google.com", ".googleapis.com"];

#[test]
fn no_request_goes_anywhere_but_home() {
    // Whatever is not for this machine would have to go through this proxy, the service
    // worker's requests as well as the page's.
    let proxy = Server::on_this_machine(release::built()).expect("a proxy that only listens");
    let switch = format!("--proxy-server=http://{}", proxy.address());
    let app = App::with(Browser::with_switches(Screen::PHONE, &[&switch]));
    app.go("?from=home#/tape?strip=3+3%2F8");
    app.wait_for_start();
    app.wait_until_kept();
    app.reload();
    app.wait_for_start();

    let mut heard_by_proxy = proxy.requests();
    heard_by_proxy.retain(|target| !BROWSERS_OWN.iter().any(|own| target.contains(own)));
    assert_eq!(heard_by_proxy, Vec::<String>::new());
    // What was typed is in the fragment, which a browser keeps to itself.
    let heard = app.server.requests();
    assert!(!heard.iter().any(|path| path.contains("strip")), "{heard:?}");

    // The proxy does hear what goes away.
    app.open("http://elsewhere.invalid/");
    assert!(proxy.requests().iter().any(|target| target.contains("elsewhere.invalid")));
}

#[test]
fn the_content_policy_refuses_other_places_and_code_in_the_page() {
    let app = App::open(Screen::PHONE);
    let refused = app.script(
        "const refused = [];
         addEventListener('securitypolicyviolation', (e) => refused.push(e.effectiveDirective));
         await fetch('http://elsewhere.invalid/').catch(() => {});
         const script = document.createElement('script');
         script.textContent = 'window.ran = true';
         document.body.append(script);
         const image = new Image();
         image.src = 'http://elsewhere.invalid/a.png';
         document.body.setAttribute('style', 'color: red');
         const form = document.createElement('form');
         form.action = 'http://elsewhere.invalid/';
         document.body.append(form);
         form.submit();
         while (refused.length < 5) await new Promise(requestAnimationFrame);
         return [...refused.sort(), String(window.ran)]",
    );
    let expected =
        ["connect-src", "form-action", "img-src", "script-src-elem", "style-src-attr", "undefined"];
    assert_eq!(refused, serde_json::json!(expected));
}

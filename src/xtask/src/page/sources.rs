//! Hand-written sources on their way to the page: without what only their readers need. These
//! are not minifiers; compression does the rest.

/// CSS without comments and indentation.
///
/// Our sheets must not hold a comment mark inside a string; nothing else is assumed.
pub(super) fn css_without_comments(css: &str) -> String {
    let mut text = String::with_capacity(css.len());
    let mut rest = css;
    while let Some((before, after)) = rest.split_once("/*") {
        text.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    text.push_str(rest);
    trimmed_lines(text.lines())
}

/// A script without the lines that are nothing but a comment, and without indentation.
///
/// Neither ours nor the bindings generator's hold such a line inside a template text; nothing else is assumed.
pub(super) fn script_without_comments(script: &str) -> String {
    let is_comment = |line: &&str| {
        let line = line.trim();
        line.starts_with("//") || (line.starts_with("/**") && line.ends_with("*/"))
    };
    trimmed_lines(script.lines().filter(|line| !is_comment(line)))
}

/// The script that starts a program in a Web Worker, as a module beside the program's two files.
///
/// A start that fails is told as the message `failed`: not every browser tells the page of a module
/// that ended so.
pub(super) fn loader(script: &str, wasm: &str) -> String {
    format!(
        "try {{\n\
         const {{ default: start }} = await import(\"./{script}\");\n\
         await start({{ module_or_path: new URL(\"./{wasm}\", import.meta.url) }});\n\
         }} catch {{\n\
         postMessage(\"failed\");\n\
         }}\n"
    )
}

fn trimmed_lines<'a>(lines: impl Iterator<Item = &'a str>) -> String {
    let mut kept = String::new();
    for line in lines.map(str::trim).filter(|line| !line.is_empty()) {
        kept.push_str(line);
        kept.push('\n');
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_indentation_go_rules_stay() {
        let css = "/* one\n two */\na {\n  color: red; /* why */\n}\n\nb{}\n/* open";
        assert_eq!(css_without_comments(css), "a {\ncolor: red;\n}\nb{}\n");
    }

    #[test]
    fn only_whole_lines_of_comment_leave_a_script() {
        let script = "// why\n/** what */\nconst a = \"http://x\"; // kept\n\n  /* kept */ go();\n";
        assert_eq!(
            script_without_comments(script),
            "const a = \"http://x\"; // kept\n/* kept */ go();\n"
        );
    }

    #[test]
    fn the_loader_of_a_worker_names_its_two_files_and_tells_of_a_failure() {
        assert_eq!(
            loader("w-1.js", "w-2.wasm"),
            "try {\nconst { default: start } = await import(\"./w-1.js\");\n\
             await start({ module_or_path: new URL(\"./w-2.wasm\", import.meta.url) });\n\
             } catch {\npostMessage(\"failed\");\n}\n"
        );
    }
}

//! An amendment as plain text.

use super::page::Page;
use super::{appendix, closing, round};
use crate::record::form::{AgentOn, Amendment};
use crate::words::{Args, Words};

pub(super) fn render(record: &Amendment, words: &Words) -> String {
    let names = record.people.iter().map(|member| (member.number, member.name.clone())).collect();
    let mut page = Page::new(words, &record.reader, record.at.offset_minutes, names);
    let agent = AgentOn { code: record.agent.clone(), at: record.at };
    page.head(&record.head, "", &[agent]);
    title(&mut page, record);
    page.section("record-amended-text");
    page.para(2, &record.text);
    if !record.topics.is_empty() {
        page.section("record-amended-topics");
        for topic in &record.topics {
            page.blank();
            page.para(0, &topic.title);
            for caution in &topic.cautions {
                round::caution(&mut page, caution);
            }
        }
    }
    closing::signatures(&mut page, &record.signatures, &[], &[]);
    appendix::verify(&mut page, &record.head);
    page.finish()
}

fn title(page: &mut Page<'_>, record: &Amendment) {
    page.rule('=');
    let title = page.say("record-title-amendment");
    page.para(0, &title);
    page.para(0, &record.organization);
    page.notice();
    page.rule('=');
    page.field("record-id", &record.head.id.to_string());
    page.field("record-amends", &record.amends.id.to_string());
    page.field("record-amends-digest", &record.amends.digest.to_string());
    page.field("record-unit", &record.unit_name);
    page.field("record-agent", &record.agent);
    page.field("record-made", &page.time(&record.at));
    page.field("record-sealed", &page.time_with_offset(record.head.sealed));
    page.blank();
    let text = page.say("record-amendment-means");
    page.para(2, &text);
    page.blank();
    for member in &record.people {
        let args = Args::new().text("name", page.person(member.number)).text("age", member.age.to_string());
        let text = page.say_with("record-party-line", &args);
        page.hang(2, "* ", &text);
    }
}

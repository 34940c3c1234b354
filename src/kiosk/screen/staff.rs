//! Staff: who works with this tablet, their roles and PINs. It lies behind the gate.

mod view;

use super::Action;
use crate::kiosk::context::Ctx;
use crate::kiosk::ui::PinKey;
use crate::tablet::staff::{Change, Credential, NotAllowed, Pin, Role, Staff};

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Page {
    /// Everybody.
    List,
    /// Code and role of somebody new.
    Add { code: String, role: Role, fault: Option<NotAllowed> },
    /// A PIN, twice.
    Pin { whose: Whose, first: Option<Pin>, typed: Pin, differs: bool },
    /// Whether somebody is to go.
    Remove(String),
}

/// Whose PIN it is.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Whose {
    /// Of somebody new.
    New { code: String, role: Role },
    /// Of somebody who is here.
    Of(String),
}

/// State of the screen.
#[derive(Debug)]
pub struct State {
    /// Who came through the gate; nobody while nobody has a PIN.
    by: Option<(String, Role)>,
    page: Page,
    saving: bool,
    fault: Option<String>,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// Somebody is to be added.
    AddAsked,
    /// Their code was typed.
    CodeTyped(String),
    /// Their role was chosen.
    RoleChosen(Role),
    /// Code and role are said.
    CodeGiven,
    /// Somebody wants another PIN.
    PinAsked(String),
    /// A key of the pad.
    Key(PinKey),
    /// Somebody is to go.
    RemoveAsked(String),
    /// They go.
    RemoveConfirmed,
    /// Back to the list.
    Back,
    /// To the Yard.
    YardAsked,
}

/// What follows a change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum After {
    /// The list.
    Stay,
    /// Whoever stands here may say no more.
    Leave,
}

impl State {
    /// The screen for whoever came through the gate.
    #[must_use]
    pub fn new(by: Option<(String, Role)>) -> Self {
        let page = match by {
            Some(_) => Page::List,
            None => Page::add(Role::Office),
        };
        Self { by, page, saving: false, fault: None }
    }

    fn by(&self) -> String {
        self.by.as_ref().map(|(code, _)| code.clone()).unwrap_or_default()
    }

    fn is_office(&self) -> bool {
        self.by.as_ref().is_none_or(|(_, role)| *role == Role::Office)
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        if self.saving {
            return Action::None;
        }
        let nobody = Staff::default();
        let staff = ctx.crew.staff.unwrap_or(&nobody);
        match message {
            Message::AddAsked => {
                let role = if staff.is_empty() { Role::Office } else { Role::Agent };
                self.page = Page::add(role);
            }
            Message::CodeTyped(typed) => {
                if let Page::Add { code, fault, .. } = &mut self.page {
                    (*code, *fault) = (typed, None);
                }
            }
            Message::RoleChosen(chosen) => {
                if let Page::Add { role, .. } = &mut self.page {
                    *role = chosen;
                }
            }
            Message::CodeGiven => self.code_given(staff),
            Message::PinAsked(code) => self.page = Page::pin(Whose::Of(code)),
            Message::Key(key) => return self.key(key),
            Message::RemoveAsked(code) => self.page = Page::Remove(code),
            Message::RemoveConfirmed => {
                let Page::Remove(code) = &self.page else { return Action::None };
                let (by, code) = (self.by(), code.clone());
                return self.change(Change::Remove { by, code });
            }
            Message::Back => {
                self.fault = None;
                // Where nobody is listed, the way back is the Yard.
                if staff.is_empty() {
                    return Action::ToYard;
                }
                self.page = Page::List;
            }
            Message::YardAsked => return Action::ToYard,
        }
        self.fault = None;
        Action::None
    }

    fn change(&mut self, change: Change) -> Action {
        self.saving = true;
        Action::Staff(change)
    }

    fn code_given(&mut self, staff: &Staff) {
        let Page::Add { code, role, fault } = &mut self.page else { return };
        let tidy = code.trim().to_owned();
        match staff.fits(&tidy) {
            Ok(()) => self.page = Page::pin(Whose::New { code: tidy, role: *role }),
            Err(why) => *fault = Some(why),
        }
    }

    fn key(&mut self, key: PinKey) -> Action {
        let Page::Pin { whose, first, typed, differs } = &mut self.page else { return Action::None };
        match key {
            PinKey::Digit(digit) => typed.push(digit),
            PinKey::Back => typed.pop(),
            PinKey::End if !typed.is_whole() => {}
            PinKey::End => {
                let pin = std::mem::take(typed);
                match first.take() {
                    None => *first = Some(pin),
                    Some(before) if before == pin => {
                        let whose = whose.clone();
                        return self.pin_given(whose, pin);
                    }
                    Some(_) => {
                        *differs = true;
                        return Action::None;
                    }
                }
            }
        }
        *differs = false;
        Action::None
    }

    fn pin_given(&mut self, whose: Whose, pin: Pin) -> Action {
        let by = self.by();
        let change = match whose {
            Whose::New { code, role } => Change::Add { by, who: Credential { code, pin }, role },
            Whose::Of(code) => Change::Pin { by, who: Credential { code, pin } },
        };
        self.change(change)
    }

    /// Takes in what became of a change. Whoever added the first person is that person from then on.
    pub fn changed(&mut self, result: Result<(), String>, staff: Option<&Staff>) -> After {
        self.saving = false;
        self.fault = result.err();
        let people = staff.map(Staff::people).unwrap_or_default();
        if self.by.is_none()
            && let [first] = people
        {
            self.by = Some((first.code.clone(), first.role));
        }
        self.page = Page::List;
        let known = |(code, _): &(String, Role)| people.iter().any(|m| m.code == *code);
        if self.by.as_ref().is_some_and(known) || self.fault.is_some() { After::Stay } else { After::Leave }
    }
}

impl Page {
    fn add(role: Role) -> Self {
        Self::Add { code: String::new(), role, fault: None }
    }

    fn pin(whose: Whose) -> Self {
        Self::Pin { whose, first: None, typed: Pin::default(), differs: false }
    }
}

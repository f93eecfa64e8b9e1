//! How the moisture calculator reads what it asks.

use super::fields::{
    AIR, BOARDS, CELSIUS, DEGREES, DRIEST, DRIEST_IS, FAHRENHEIT, FIND_TODAY, FLAT, GAP_TODAY,
    GAP_WANTED, GRAIN, HUMIDITY, IN_CELSIUS, KNOWN, LATER_IS, MOISTURE_LATER, MOISTURE_TODAY,
    QUARTER, THICKNESS, TODAY_IS, WETTEST, WETTEST_IS, WIDTH, WOOD,
};
use super::movement::{Moistures, Wood};
use super::weather::moisture;
use super::woods::SOFTWOOD;
use super::{air, board, gap, swing};
use crate::sheet::Ask;
use crate::tables::air::place;
use crate::tables::species::{Grain, species};

fn wood(ask: &Ask) -> Option<Wood> {
    match ask.choice(&WOOD) {
        SOFTWOOD => Some(Wood::OrdinarySoftwood),
        wood => {
            let grain = match ask.choice(&GRAIN) {
                FLAT => Some(Grain::FlatSawn),
                QUARTER => Some(Grain::QuarterSawn),
                _ => None,
            };
            species(wood.id).map(|species| Wood::Species(species, grain))
        }
    }
}

fn today_and_later(ask: &mut Ask) -> Option<Moistures> {
    let now = moisture(ask, &TODAY_IS, &MOISTURE_TODAY);
    let later = moisture(ask, &LATER_IS, &MOISTURE_LATER);
    Some(Moistures::now_and_later(now?, later?))
}

pub(super) fn board(ask: &mut Ask) -> Option<board::Input> {
    let (width, thickness) = (ask.length(&WIDTH), ask.length(&THICKNESS));
    let (moistures, wood) = (today_and_later(ask), wood(ask));
    Some(board::Input { thickness: thickness?, width: width?, wood: wood?, moistures: moistures? })
}

pub(super) fn gap(ask: &mut Ask) -> Option<gap::Input> {
    let (width, boards) = (ask.length(&WIDTH), ask.count(&BOARDS));
    let known = match ask.choice(&KNOWN) {
        FIND_TODAY => ask.length(&GAP_WANTED).map(gap::Known::Later),
        _ => ask.length(&GAP_TODAY).map(gap::Known::Today),
    };
    let (moistures, wood) = (today_and_later(ask), wood(ask));
    Some(gap::Input {
        width: width?,
        boards: boards?,
        known: known?,
        wood: wood?,
        moistures: moistures?,
    })
}

pub(super) fn swing(ask: &mut Ask) -> Option<swing::Input> {
    let width = ask.length(&WIDTH);
    let driest = moisture(ask, &DRIEST_IS, &DRIEST);
    let wettest = moisture(ask, &WETTEST_IS, &WETTEST);
    let moistures = Moistures::driest_and_wettest(driest?, wettest?);
    Some(swing::Input { width: width?, wood: wood(ask)?, moistures })
}

pub(super) fn air(ask: &mut Ask) -> Option<air::Input> {
    if let Some(place) = place(ask.choice(&AIR).id) {
        return Some(air::Input::Place(place));
    }
    let temperature = match ask.choice(&DEGREES) {
        IN_CELSIUS => ask.real(&CELSIUS).map(air::Temperature::Celsius),
        _ => ask.real(&FAHRENHEIT).map(air::Temperature::Fahrenheit),
    };
    let humidity = ask.real(&HUMIDITY);
    Some(air::Input::Air(temperature?, humidity?))
}

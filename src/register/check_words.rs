//! Check-words: read over the radio in the morning against the list of cards in force.
//!
//! Ordinary words spelled alike in English and Spanish, four to six letters so that they fit a corner tab
//! at full size. No trade words, numbers, units or shapes; none that sounds like a drug, a curse, a command
//! in either language (CAVA, LAVA, SAL, VEN), or a letter of the radio alphabet (GOLF, HOTEL, TANGO).
//! Order matters: it is the order of giving out, so a word is only ever added at the end.

/// The words, in the order they are given out.
#[rustfmt::skip]
pub const CHECK_WORDS: &[&str] = &[
    "PIANO", "CACTUS", "MANGO", "PUMA", "KOALA", "VIOLIN", "TUNDRA", "JAGUAR", "OPERA", "BANJO",
    "ROBOT", "MELON", "IGUANA", "KAYAK", "COSMOS", "AGAVE", "RODEO", "SUSHI", "PANDA", "HUSKY",
    "DISCO", "LEMUR", "WAFFLE", "ALBUM", "FAUNA", "CORAL", "TAXI", "BINGO", "ORCA", "YETI",
    "MIMOSA", "JUDO", "RADAR", "CHALET", "ATLAS", "KIMONO", "UTOPIA", "BEAGLE", "DOMINO", "FLAN",
    "NINJA", "POLO", "TUBA", "HANGAR", "CEREAL", "EMOJI", "GURU", "AURORA", "COYOTE", "RUGBY",
    "OASIS", "PIZZA", "INDIGO", "JAZZ", "VILLA", "SAFARI", "TOTEM", "MENU", "ACTOR", "CASINO",
    "DEBUT", "KIWI", "BRONCO", "HAIKU", "LUNAR", "FIASCO", "PAELLA", "NECTAR", "SOFA", "AZALEA",
    "KEBAB", "CONDOR", "WIFI", "OBOE", "TAPIR", "EDITOR", "RETRO", "GAUCHO", "ULTRA", "BALLET",
    "MEDUSA", "YOGA", "CAMPUS", "DRAGON", "JOKER", "FORUM", "IRIS", "SIESTA", "ALPACA", "COBRA",
    "VECTOR", "HOCKEY", "NEON", "PUEBLO", "RIVAL", "QUINOA", "BOLERO", "AROMA", "CHEF", "SLALOM",
    "TEMPO", "LIMBO", "JUMBO", "ENIGMA", "FONDUE", "GECKO", "CLUB", "PAGODA", "BUFFET", "TUTOR",
    "VIDEO", "SULTAN", "RUMBA", "OKAPI", "ZIGZAG", "CAFE", "FICUS", "AUDIO", "PICNIC", "JUNIOR",
    "NAVAL", "COLLIE", "BAOBAB", "DONUT", "ELITE", "KARATE", "HUMOR", "GONG", "REGGAE", "PUZZLE",
    "SONAR", "TURBO", "VOCAL", "ACACIA", "FAJITA", "IDEA", "BISTRO", "JADE", "PONCHO", "TORO",
    "CREPE", "NACHO", "SURF", "BONSAI", "TROLL", "PESTO", "FLORA", "RALLY",
];

#[cfg(test)]
mod tests {
    use super::CHECK_WORDS;
    use std::collections::BTreeMap;

    fn distance(a: &str, b: &str) -> usize {
        let b: Vec<char> = b.chars().collect();
        let mut row: Vec<usize> = (0..=b.len()).collect();
        for (i, x) in a.chars().enumerate() {
            let mut before = row[0];
            row[0] = i + 1;
            for (j, y) in b.iter().enumerate() {
                let cost = if x == *y { before } else { 1 + before.min(row[j]).min(row[j + 1]) };
                before = row[j + 1];
                row[j + 1] = cost;
            }
        }
        row[b.len()]
    }

    #[test]
    fn many_short_plain_words() {
        assert!(CHECK_WORDS.len() >= 120, "{}", CHECK_WORDS.len());
        for word in CHECK_WORDS {
            assert!((4..=6).contains(&word.len()) && word.chars().all(|c| c.is_ascii_uppercase()), "{word}");
        }
    }

    #[test]
    fn no_two_are_one_slip_apart() {
        let mut close = Vec::new();
        for (i, a) in CHECK_WORDS.iter().enumerate() {
            close.extend(CHECK_WORDS[i + 1..].iter().filter(|b| distance(a, b) < 2).map(|b| format!("{a}/{b}")));
        }
        assert!(close.is_empty(), "{close:?}");
    }

    #[test]
    fn first_three_letters_tell_them_apart() {
        let mut heads: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for word in CHECK_WORDS {
            heads.entry(&word[..3]).or_default().push(word);
        }
        let shared: Vec<_> = heads.values().filter(|w| w.len() > 1).collect();
        assert!(shared.is_empty(), "{shared:?}");
    }

    #[test]
    fn none_is_a_word_of_the_trade_or_an_order() {
        let refused = [
            "ALTO", "AREA", "ARENA", "BETON", "CAL", "CAVA", "COLOR", "CURA", "DIGA", "GAL", "LASER", "LAVA", "LIBRA", "LITRO", "MESA",
            "METAL", "METRO", "MOTOR", "MURAL", "OVAL", "PALA", "PARA", "PASTA", "PESO", "PLASMA", "RADIO", "SACO", "SAGA", "SALSA",
            "SILO", "STOP", "TIRA", "TOMA", "TRIO", "VAPOR", "VISOR",
        ];
        for word in CHECK_WORDS {
            assert!(!refused.contains(word), "{word}");
        }
    }
}

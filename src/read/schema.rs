//! The field tables as JSON Schema, so that an editor completes keys and marks mistakes while one types.
//!
//! An editor sees YAML's own idea of a scalar (`2.50` is a number, `yes` may be a truth value), so the schema
//! allows both. It checks less than the reader: units and limits are the reader's.

use serde_json::{Map, Value, json};

use super::field::{Field, Need, Want};
use super::kinds::{FORMAT, HEAD, KindOf};
use crate::words::Lang;

/// The schema of a kind's front matter, draft 2020-12; `twin` is for its files in other languages.
pub fn schema(kind: &KindOf, twin: bool) -> Value {
    let fields: Vec<&Field> = HEAD.iter().chain(if twin { kind.twin() } else { kind.fields }).collect();
    let mut schema = object(&fields, false);
    let what = if twin { "words of a twin in another language" } else { kind.meaning };
    let head = [
        ("$schema", json!("https://json-schema.org/draft/2020-12/schema")),
        ("$id", json!(format!("urn:hodbook:{FORMAT}:{}{}", kind.kind, if twin { "-twin" } else { "" }))),
        ("title", json!(kind.kind)),
        ("description", json!(what)),
    ];
    let mut out = Map::new();
    out.extend(head.map(|(k, v)| (k.to_owned(), v)));
    if let Value::Object(rest) = &mut schema {
        if let Some(Value::Object(properties)) = rest.get_mut("properties") {
            properties.insert("hodbook".into(), json!({"const": FORMAT, "description": "the format mark"}));
            properties.insert("kind".into(), json!({"const": kind.kind, "description": "the kind of the file"}));
        }
        out.append(rest);
    }
    Value::Object(out)
}

/// An object of the fields. One that may say `like` needs its keys only when it does not.
fn object(fields: &[&Field], like: bool) -> Value {
    let mut properties = Map::new();
    for field in fields {
        properties.insert(field.name.to_owned(), property(field));
        if matches!(field.want, Want::Words) {
            for lang in Lang::all().filter(|l| l.code() != "en") {
                let text = json!({"type": "string", "description": format!("{}, in {}", field.meaning, lang.text("language.name"))});
                properties.insert(format!("{}_{}", field.name, lang.code()), text);
            }
        }
    }
    if like {
        let text = "takes every key that is not here from the entry of this name";
        properties.insert("like".to_owned(), json!({"type": "string", "description": text}));
    }
    let required: Vec<&str> = fields.iter().filter(|f| matches!(f.need, Need::Always)).map(|f| f.name).collect();
    let mut conditions: Vec<Value> = Vec::new();
    for field in fields {
        if let Need::When(key, values) | Need::WhenElseFree(key, values) = field.need {
            conditions.push(json!({
                "if": {"properties": {key: {"enum": values}}, "required": [key]},
                "then": {"required": [field.name]},
            }));
        }
    }
    let mut out = json!({"type": "object", "properties": properties, "additionalProperties": false});
    if let Value::Object(map) = &mut out {
        let mut needs = Map::new();
        needs.insert("required".into(), json!(required));
        if !conditions.is_empty() {
            needs.insert("allOf".into(), json!(conditions));
        }
        if like {
            map.insert("if".into(), json!({"required": ["like"]}));
            map.insert("else".into(), Value::Object(needs));
        } else {
            map.append(&mut needs);
        }
    }
    out
}

fn property(field: &Field) -> Value {
    let text = json!(["string", "number"]);
    // A number is followed by its unit.
    let amount = json!({"type": "string", "pattern": "[0-9½¼¾⅓⅔⅛⅜⅝⅞][^0-9]*[^0-9 ./,:-]"});
    let mut value = match field.want {
        Want::Group(fields) => object(&fields.iter().collect::<Vec<_>>(), false),
        Want::Map(_, fields) => json!({"type": "object", "additionalProperties": object(&fields.iter().collect::<Vec<_>>(), true)}),
        Want::List(fields) => json!({"type": "array", "items": object(&fields.iter().collect::<Vec<_>>(), false)}),
        Want::Choice(words) => json!({"enum": words}),
        Want::YesNo => json!({"enum": ["yes", "no", true, false]}),
        Want::Whole => json!({"type": "integer"}),
        Want::Plain => json!({"type": text}),
        Want::Clock => json!({"type": "string", "pattern": "^[0-9]{1,2}:[0-9]{2}$"}),
        Want::Date => json!({"type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}),
        Want::Dates => json!({"type": "array", "items": {"type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}}),
        Want::Choices(words) => json!({"type": "array", "items": {"enum": words}}),
        Want::Texts => json!({"type": "array", "items": {"type": text}}),
        Want::Languages => json!({"type": "array", "items": {"enum": Lang::all().map(Lang::code).collect::<Vec<_>>()}}),
        Want::Amount(..) | Want::Range(..) | Want::TimeAt => amount,
        Want::Corners => {
            json!({"type": "array", "minItems": 3, "items": {"type": "array", "minItems": 2, "maxItems": 2, "items": amount}})
        }
        Want::Lengths => json!({"type": "array", "items": amount}),
        Want::Ratio => json!({"type": "string", "pattern": "^[0-9.]+:[0-9.]+ by (mass|volume)$"}),
        Want::Text | Want::Words => json!({"type": text}),
    };
    if let Value::Object(map) = &mut value {
        let limits = field.bounds_said();
        let limits = if limits.is_empty() { limits } else { format!("; {limits}") };
        map.insert("description".into(), json!(format!("{}{limits}", field.meaning)));
        let listed = matches!(
            field.want,
            Want::Texts | Want::Choices(_) | Want::Dates | Want::Corners | Want::Lengths | Want::Languages | Want::YesNo | Want::Whole
        );
        if !field.example.is_empty() && !listed {
            map.insert("examples".into(), json!([field.example]));
        }
    }
    value
}

#[cfg(test)]
mod tests {
    use super::super::kinds::KINDS;
    use super::*;

    #[test]
    fn every_key_of_every_table_is_described() {
        fn walk(value: &Value, path: &str) {
            if let Some(properties) = value.get("properties").and_then(Value::as_object) {
                for (key, property) in properties {
                    let said = property.get("description").and_then(Value::as_str).unwrap_or("");
                    assert!(!said.is_empty(), "{path}.{key} is not described");
                    walk(property, &format!("{path}.{key}"));
                    for inner in ["items", "additionalProperties"] {
                        property.get(inner).into_iter().for_each(|i| walk(i, &format!("{path}.{key}")));
                    }
                }
            }
        }
        for kind in KINDS {
            walk(&schema(kind, false), kind.kind);
            walk(&schema(kind, true), kind.kind);
            assert_eq!(schema(kind, false)["properties"]["kind"]["const"], kind.kind);
        }
    }
}

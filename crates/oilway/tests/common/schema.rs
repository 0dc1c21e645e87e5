//! A validator for JSON Schema 2020-12 as far as our schemas go. A keyword that it does not know is a fault: nothing is passed over.

use serde_json::Value;

/// Everything in which a value differs from a schema, by place.
pub(crate) fn faults(schema: &Value, value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    validate(schema, schema, value, "", &mut found);
    found
}

fn validate(root: &Value, schema: &Value, value: &Value, at: &str, found: &mut Vec<String>) {
    let Some(keywords) = schema.as_object() else {
        if schema == &Value::Bool(false) {
            found.push(format!("{at}: nothing may stand here"));
        }
        return;
    };
    for (keyword, wanted) in keywords {
        match keyword.as_str() {
            "$schema" | "title" | "description" | "$defs" | "format" | "default" => {}
            "$ref" => {
                let target = wanted.as_str().and_then(|path| root.pointer(path.trim_start_matches('#')));
                match target {
                    Some(target) => validate(root, target, value, at, found),
                    None => found.push(format!("{at}: the schema refers to {wanted}, which is not there")),
                }
            }
            "type" if !is_of_type(wanted, value) => {
                found.push(format!("{at}: {value} is not of type {wanted}"))
            }
            "type" => {}
            "const" if wanted != value => found.push(format!("{at}: {value} is not {wanted}")),
            "const" => {}
            "enum" if !wanted.as_array().is_some_and(|list| list.contains(value)) => {
                found.push(format!("{at}: {value} is none of {wanted}"));
            }
            "enum" => {}
            "minimum" if value.is_number() && value.as_f64() < wanted.as_f64() => {
                found.push(format!("{at}: {value} is below {wanted}"))
            }
            "maximum" if value.is_number() && value.as_f64() > wanted.as_f64() => {
                found.push(format!("{at}: {value} is above {wanted}"));
            }
            "minimum" | "maximum" => {}
            "required" => {
                for name in wanted.as_array().into_iter().flatten().filter_map(Value::as_str) {
                    if value.is_object() && value.get(name).is_none() {
                        found.push(format!("{at}: {name} is missing"));
                    }
                }
            }
            "properties" => {
                for (name, inner) in value.as_object().into_iter().flatten() {
                    match wanted.get(name) {
                        Some(schema) => validate(root, schema, inner, &format!("{at}/{name}"), found),
                        None => found.push(format!("{at}: the schema does not know {name}")),
                    }
                }
            }
            "items" => {
                let skip = schema.get("prefixItems").and_then(Value::as_array).map_or(0, Vec::len);
                for (number, inner) in value.as_array().into_iter().flatten().enumerate().skip(skip) {
                    validate(root, wanted, inner, &format!("{at}/{number}"), found);
                }
            }
            "prefixItems" => {
                let pairs =
                    wanted.as_array().into_iter().flatten().zip(value.as_array().into_iter().flatten());
                for (number, (schema, inner)) in pairs.enumerate() {
                    validate(root, schema, inner, &format!("{at}/{number}"), found);
                }
            }
            "minItems" | "maxItems" => {
                let count = value.as_array().map(|list| list.len() as u64);
                let good = count.is_none_or(|count| {
                    let bound = wanted.as_u64().unwrap_or_default();
                    if keyword == "minItems" { count >= bound } else { count <= bound }
                });
                if !good {
                    found.push(format!("{at}: {keyword} {wanted}"));
                }
            }
            "anyOf" => {
                let choices = wanted.as_array().into_iter().flatten();
                let fits = |schema: &Value| {
                    let mut inner = Vec::new();
                    validate(root, schema, value, at, &mut inner);
                    inner.is_empty()
                };
                if !choices.clone().any(fits) {
                    found.push(format!("{at}: {value} fits none of {wanted}"));
                }
            }
            other => found.push(format!("{at}: the validator does not know the keyword {other}")),
        }
    }
}

fn is_of_type(wanted: &Value, value: &Value) -> bool {
    let is = |name: &str| match name {
        "null" => value.is_null(),
        "boolean" => value.is_boolean(),
        "string" => value.is_string(),
        "array" => value.is_array(),
        "object" => value.is_object(),
        "integer" => value.is_i64() || value.is_u64(),
        "number" => value.is_number(),
        _ => false,
    };
    match wanted {
        Value::String(name) => is(name),
        Value::Array(names) => names.iter().filter_map(Value::as_str).any(is),
        _ => false,
    }
}

//! WebDriver BiDi, as far as a phone needs it: a command goes out, its answer comes back.
//! What the browser says unasked is passed over.

use anyhow::{Context, Result, bail};
use serde_json::{Value, json};
use std::cell::RefCell;
use std::net::TcpStream;
use thirtyfour::WebDriver;
use tungstenite::stream::MaybeTlsStream;
use tungstenite::{Message, WebSocket};

/// The connection of one browser.
#[derive(Debug)]
pub(crate) struct Line(RefCell<Open>);

#[derive(Debug)]
struct Open {
    socket: WebSocket<MaybeTlsStream<TcpStream>>,
    sent: u64,
}

impl Line {
    pub(super) fn open(browser: &WebDriver) -> Result<Self> {
        let address = browser.handle().capabilities().get("webSocketUrl");
        let address = address.and_then(Value::as_str).context("the browser has no BiDi")?;
        let (socket, _) = tungstenite::connect(address).context("the browser does not answer to BiDi")?;
        Ok(Self(RefCell::new(Open { socket, sent: 0 })))
    }

    /// Sends a command and waits for its answer.
    pub(crate) fn send(&self, method: &str, parameters: &Value) -> Result<Value> {
        self.0
            .borrow_mut()
            .send(method, parameters)
            .with_context(|| format!("{method} was refused"))
    }
}

impl Open {
    fn send(&mut self, method: &str, parameters: &Value) -> Result<Value> {
        self.sent += 1;
        let command = json!({ "id": self.sent, "method": method, "params": parameters });
        self.socket.send(Message::text(command.to_string()))?;
        loop {
            let Message::Text(text) = self.socket.read()? else {
                continue;
            };
            let mut answer: Value = serde_json::from_str(&text)?;
            if answer["id"].as_u64() != Some(self.sent) {
                continue;
            }
            if answer["type"] == "error" {
                bail!("{}: {}", answer["error"], answer["message"]);
            }
            return Ok(answer["result"].take());
        }
    }
}

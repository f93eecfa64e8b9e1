//! A device without room, for a while.

use serde_json::Value;

/// No room: a browser may say so when it is asked, or when the transaction ends. (The browser's own limit cannot be set
/// from outside: Chromium 156 ignores `Storage.overrideQuotaForOrigin` for the database.) `refused` counts what had no room.
pub(super) const FULL_AT_ONCE: &str = "window.putOfTheBrowser = IDBObjectStore.prototype.put;
  window.refused = 0;
  IDBObjectStore.prototype.put = function () { refused++; throw new DOMException('full', 'QuotaExceededError') }";
pub(super) const FULL_AT_THE_END: &str =
    "const put = window.putOfTheBrowser = IDBObjectStore.prototype.put;
  const commit = IDBTransaction.prototype.commit;
  const full = new WeakSet();
  window.refused = 0;
  IDBObjectStore.prototype.put = function (...all) {
    const request = put.apply(this, all);
    refused++;
    if (!full.has(this.transaction)) {
      full.add(this.transaction);
      queueMicrotask(() => this.transaction.abort());
    }
    return request;
  };
  IDBTransaction.prototype.commit = function () { full.has(this) || commit.call(this) }";

/// A device without room.
pub(super) struct Full {
    /// Actions until there is room again.
    pub(super) actions: usize,
    /// How the page finds out.
    pub(super) way: &'static str,
    /// What a window has of it before it loads a page.
    pub(super) script: Value,
}

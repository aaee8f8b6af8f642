//! What a night and a day of light are held against.

/// Dawn oxygen under which a word is due, mg/L (common practice in fish culture, no
/// source).
pub const DAWN_NOTE_MG_L: f64 = 5.0;
/// Dawn oxygen under which to keep an eye on it, and which advised air is sized for, mg/L
/// (likewise).
pub const DAWN_WATCH_MG_L: f64 = 4.0;
/// Dawn oxygen under which to act, mg/L (likewise).
pub const DAWN_ACT_MG_L: f64 = 3.0;
/// Hours of light from which a young tank turns to algae (common practice, no source).
pub const LONG_LIGHT_H: f64 = 10.0;

//! The camera: its picture in an element of the page, and the middle of it as pixels.

use std::fmt;

use gloo::utils::{document, window};
use js_sys::{Object, Reflect};
use reckoner_formats::middle;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    CanvasRenderingContext2d, DomException, HtmlCanvasElement, HtmlVideoElement, MediaStream,
    MediaStreamConstraints, MediaStreamTrack,
};

/// Why there is no picture. `Display` is the sentence for the user.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum CameraProblem {
    /// The device has none, or the page may not ask for one.
    Absent,
    /// The user or the browser said no.
    Refused,
    /// Something else has it.
    Busy,
}

impl fmt::Display for CameraProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CameraProblem::Absent => {
                "This browser gives the page no camera. Take the job in as a file, a link or a text."
            }
            CameraProblem::Refused => {
                "The camera was refused. Allow it for this page in the settings of the browser, or take the job in as a \
                 file, a link or a text."
            }
            CameraProblem::Busy => {
                "Something else uses the camera. Close that and try again, or take the job in as a file, a link or a text."
            }
        })
    }
}

/// An open camera. Dropping it stops it.
pub(crate) struct Camera {
    stream: MediaStream,
    video: HtmlVideoElement,
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
}

impl Drop for Camera {
    fn drop(&mut self) {
        stop(&self.stream);
        self.video.set_src_object(None);
    }
}

fn stop(stream: &MediaStream) {
    for track in stream.get_tracks().iter() {
        if let Ok(track) = track.dyn_into::<MediaStreamTrack>() {
            track.stop();
        }
    }
}

/// Opens the camera on the back of the device, if there is one, and shows its picture in the video
/// element with this id.
pub(crate) async fn open(id: &str) -> Result<Camera, CameraProblem> {
    let video = document().get_element_by_id(id).and_then(|it| it.dyn_into().ok());
    let video: HtmlVideoElement = video.ok_or(CameraProblem::Absent)?;
    let stream = ask().await?;
    let canvas = || -> Option<(HtmlCanvasElement, CanvasRenderingContext2d)> {
        let canvas: HtmlCanvasElement =
            document().create_element("canvas").ok()?.dyn_into().ok()?;
        let often = Object::new();
        Reflect::set(&often, &"willReadFrequently".into(), &true.into()).ok()?;
        let context = canvas.get_context_with_context_options("2d", &often).ok()??;
        Some((canvas, context.dyn_into().ok()?))
    };
    let Some((canvas, context)) = canvas() else {
        stop(&stream);
        return Err(CameraProblem::Absent);
    };
    video.set_muted(true);
    video.set_src_object(Some(&stream));
    if let Ok(playing) = video.play() {
        // A browser that does not play at once plays when it can.
        drop(JsFuture::from(playing).await);
    }
    Ok(Camera { stream, video, canvas, context })
}

async fn ask() -> Result<MediaStream, CameraProblem> {
    // Absent where the page is not served over https or from this machine itself.
    let navigator: JsValue = window().navigator().into();
    let has = Reflect::get(&navigator, &"mediaDevices".into()).is_ok_and(|it| !it.is_undefined());
    let devices = has.then(|| window().navigator().media_devices().ok()).flatten();
    let devices = devices.ok_or(CameraProblem::Absent)?;
    let wanted = Object::new();
    let set = |name: &str, value: &JsValue| drop(Reflect::set(&wanted, &name.into(), value));
    // Wishes, not conditions: a laptop has no camera on its back.
    set("facingMode", &"environment".into());
    set("width", &1280.into());
    set("height", &720.into());
    let constraints = MediaStreamConstraints::new();
    constraints.set_video(&wanted);
    let asked = devices.get_user_media_with_constraints(&constraints);
    let stream = match asked {
        Ok(promise) => JsFuture::from(promise).await,
        Err(error) => Err(error),
    };
    stream.map_err(|error| problem(&error)).map(JsCast::unchecked_into)
}

fn problem(error: &JsValue) -> CameraProblem {
    let name = error.dyn_ref::<DomException>().map(DomException::name).unwrap_or_default();
    match name.as_str() {
        "NotAllowedError" | "SecurityError" => CameraProblem::Refused,
        "NotReadableError" | "AbortError" => CameraProblem::Busy,
        _ => CameraProblem::Absent,
    }
}

impl Camera {
    /// The middle of what it sees now: the side of the square, and its pixels as red, green, blue
    /// and opacity. `None` until it sees something.
    pub(crate) fn look(&self) -> Option<(u32, Vec<u8>)> {
        let middle = middle(self.video.video_width(), self.video.video_height())?;
        if self.canvas.width() != middle.drawn {
            self.canvas.set_width(middle.drawn);
            self.canvas.set_height(middle.drawn);
        }
        let (side, drawn) = (f64::from(middle.side), f64::from(middle.drawn));
        self.context
            .draw_image_with_html_video_element_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
                &self.video,
                f64::from(middle.left),
                f64::from(middle.top),
                side,
                side,
                0.0,
                0.0,
                drawn,
                drawn,
            )
            .ok()?;
        let pixels = self.context.get_image_data(0.0, 0.0, drawn, drawn).ok()?;
        Some((middle.drawn, pixels.data().0))
    }
}

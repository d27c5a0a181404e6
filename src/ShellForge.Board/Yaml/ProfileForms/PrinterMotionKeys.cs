using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>The keys of a printer that say how it is driven.</summary>
internal static class PrinterMotionKeys
{
    /// <summary>Declares the keys, and returns what puts their values together.</summary>
    public static Func<FormValues, PrinterMotion> Declare(FormKeys keys)
    {
        FormKey<Sourced> perimeters = keys.Required("perimeters", ProfileNumbers.Whole(1, 20),
            "Lines drawn round every layer, from the outside in.");
        FormKey<Sourced> skinLayers = keys.Required("skin-layers", ProfileNumbers.Whole(0, 50),
            "Solid layers over every floor and under every roof.");
        FormKey<Sourced> infill = keys.Required("infill", ProfileNumbers.Number(0, 1), "Share of plastic in what is left, 0 to 1.");
        FormKey<Sourced> speedOuter = keys.Required("speed-outer", ProfileNumbers.Number(1, 2000),
            "Speed of the outermost perimeter, mm/s.");
        FormKey<Sourced> speedInner = keys.Required("speed-inner", ProfileNumbers.Number(1, 2000), "Speed of the other perimeters, mm/s.");
        FormKey<Sourced> speedSmall = keys.Required("speed-small", ProfileNumbers.Number(1, 2000),
            "Speed round small holes and posts, mm/s.");
        FormKey<Sourced> speedSkin = keys.Required("speed-skin", ProfileNumbers.Number(1, 2000), "Speed of solid layers, mm/s.");
        FormKey<Sourced> speedTop = keys.Required("speed-top", ProfileNumbers.Number(1, 2000), "Speed of the uppermost solid layer, mm/s.");
        FormKey<Sourced> speedInfill = keys.Required("speed-infill", ProfileNumbers.Number(1, 2000), "Speed of infill, mm/s.");
        FormKey<Sourced> speedBridge = keys.Required("speed-bridge", ProfileNumbers.Number(1, 2000),
            "Speed of lines with nothing below, mm/s.");
        FormKey<Sourced> speedFirstLayer = keys.Required("speed-first-layer", ProfileNumbers.Number(1, 2000),
            "Speed of the first layer, mm/s.");
        FormKey<Sourced> speedTravel = keys.Required("speed-travel", ProfileNumbers.Number(1, 2000),
            "Speed of moves that lay nothing, mm/s.");
        FormKey<Sourced> acceleration = keys.Required("acceleration", ProfileNumbers.Number(10, 100000),
            "Acceleration while laying, mm/s2.");
        FormKey<Sourced> travelAcceleration = keys.Required("travel-acceleration", ProfileNumbers.Number(10, 100000),
            "Acceleration of moves that lay nothing, mm/s2.");
        FormKey<Sourced> cornerStep = keys.Required("corner-step", ProfileNumbers.Number(0.1, 200),
            "Change of speed along x or y that is made at once at a corner, mm/s.");
        FormKey<Sourced> layerTime = keys.Required("layer-time", ProfileNumbers.Number(0, 300),
            "Least time of a layer, s: lines are slowed down until it is reached.");
        FormKey<Sourced> speedLeast = keys.Required("speed-least", ProfileNumbers.Number(1, 200),
            "Lines are not slowed down below this speed, mm/s.");
        FormKey<Sourced> retraction = keys.Required("retraction", ProfileNumbers.Length(0, 20), "Filament drawn back before a long move.");
        FormKey<Sourced> retractionSpeed = keys.Required("retraction-speed", ProfileNumbers.Number(1, 500), "Speed of drawing back, mm/s.");
        FormKey<Sourced> retractionFrom = keys.Required("retraction-from", ProfileNumbers.Length(0, 100),
            "Moves up to this length draw nothing back.");
        FormKey<Sourced> startTime = keys.Required("start-time", ProfileNumbers.Number(0, 3600), "Heating and homing before a print, s.");
        FormKey<Sourced> changeTime = keys.Required("change-time", ProfileNumbers.Number(0, 3600), "A change of filament, s.");
        FormKey<Sourced> changePlastic = keys.Required("change-plastic", ProfileNumbers.Number(0, 10000),
            "Plastic that flushes the nozzle at a change of filament, mm3.");
        return values => new PrinterMotion
        {
            Perimeters = values.Get(perimeters).Value,
            SkinLayers = values.Get(skinLayers).Value,
            Infill = values.Get(infill).Value,
            SpeedOuter = values.Get(speedOuter).Value,
            SpeedInner = values.Get(speedInner).Value,
            SpeedSmall = values.Get(speedSmall).Value,
            SpeedSkin = values.Get(speedSkin).Value,
            SpeedTop = values.Get(speedTop).Value,
            SpeedInfill = values.Get(speedInfill).Value,
            SpeedBridge = values.Get(speedBridge).Value,
            SpeedFirstLayer = values.Get(speedFirstLayer).Value,
            SpeedTravel = values.Get(speedTravel).Value,
            Acceleration = values.Get(acceleration).Value,
            TravelAcceleration = values.Get(travelAcceleration).Value,
            CornerStep = values.Get(cornerStep).Value,
            LayerTime = values.Get(layerTime).Value,
            SpeedLeast = values.Get(speedLeast).Value,
            Retraction = values.Get(retraction).Value,
            RetractionSpeed = values.Get(retractionSpeed).Value,
            RetractionFrom = values.Get(retractionFrom).Value,
            StartTime = values.Get(startTime).Value,
            ChangeTime = values.Get(changeTime).Value,
            ChangePlastic = values.Get(changePlastic).Value,
        };
    }
}

using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A printer in a profile file.</summary>
internal static class PrinterForm
{
    /// <summary>The mapping below the printer's name.</summary>
    public static Form<Func<string, PrinterProfile>> Form { get; } = new("a printer", keys =>
    {
        // What is also measured of a printer with a filament has its bounds and its words there.
        FormKey<Sourced> Needed(string key) => keys.Required(key, ProfileNumbers.Of(PairingSize.Find(key)!), PairingSize.Find(key)!.Words);
        FormKey<Sourced> Measurable(string key, string otherwise) =>
            keys.Optional(key, ProfileNumbers.Of(PairingSize.Find(key)!), PairingSize.Find(key)!.Words, otherwise);
        FormKey<Sourced> nozzle = keys.Required("nozzle", ProfileNumbers.Length(0.1, 2), "Nozzle.");
        FormKey<Sourced> line = keys.Required("line-width", ProfileNumbers.Length(0.1, 3), "Line width.");
        FormKey<Sourced> layer = keys.Required("layer-height", ProfileNumbers.Length(0.04, 1), "Layer height.");
        FormKey<Sourced> first = keys.Required("first-layer", ProfileNumbers.Length(0.05, 1), "First layer.");
        FormKey<Sourced> bedX = keys.Required("bed-x", ProfileNumbers.Length(50, 2000), "Bed along x.");
        FormKey<Sourced> bedY = keys.Required("bed-y", ProfileNumbers.Length(50, 2000), "Bed along y.");
        FormKey<Sourced> bedZ = keys.Required("bed-z", ProfileNumbers.Length(50, 2000), "Build height.");
        FormKey<Sourced> margin = keys.Required("bed-margin", ProfileNumbers.Length(0, 50), "Margin kept free, brim included.");
        FormKey<Sourced> hole = Needed("hole-allowance");
        FormKey<Sourced> loose = keys.Required("loose-fit", ProfileNumbers.Length(0, 2), "Gap per side.");
        FormKey<Sourced> normal = keys.Required("normal-fit", ProfileNumbers.Length(0, 2), "Gap per side.");
        FormKey<Sourced> lip = Measurable("lip-fit", "normal-fit");
        FormKey<Sourced> slot = Measurable("slot-fit", "normal-fit");
        FormKey<Sourced> inlay = Measurable("inlay-fit", "0.3");
        FormKey<Sourced> layerFit = Measurable("layer-fit", "0.2");
        FormKey<Sourced> magnet = Measurable("magnet-allowance", "0.15");
        FormKey<Sourced> battery = Measurable("battery-fit", "0.6");
        FormKey<Sourced> thinnest = Measurable("thinnest-wall", "line-width");
        FormKey<Sourced> snap = Measurable("snap-force", "1");
        FormKey<Sourced> tight = keys.Required("tight-fit", ProfileNumbers.Length(0, 2), "Gap per side.");
        FormKey<Sourced> accuracy = keys.Required("accuracy", ProfileNumbers.Length(0, 2), "Spread of a printed size, plus and minus.");
        FormKey<Sourced> foot = keys.Required("elephant-foot", ProfileNumbers.Length(0, 1), "Growth of the first layers per side.");
        FormKey<Sourced> overhang = keys.Required("overhang", ProfileNumbers.Number(20, 85),
            "Largest overhang from the vertical, degrees.");
        FormKey<Sourced> bridgeNote = Needed("bridge-note");
        FormKey<Sourced> bridgeWarn = Needed("bridge-warn");
        FormKey<Sourced> bridgeStop = Needed("bridge-stop");
        FormKey<Sourced> flow = keys.Required("flow-rate", ProfileNumbers.Number(0.1, 100),
            "Most plastic that the nozzle melts, mm3/s: no line is laid faster.");
        Func<FormValues, PrinterMotion> motion = PrinterMotionKeys.Declare(keys);
        FormKey<Sourced> filaments = keys.Optional("filaments", ProfileNumbers.Whole(1, 64),
            "Filaments that it changes between by itself within a print.", "1");
        FormKey<bool> scales = keys.Defaulted("slicer-scales-shrinkage", new FlagKind(), "Whether the slicer scales for shrinkage.",
            "false");
        return values => name => new PrinterProfile
        {
            Name = name,
            Nozzle = values.Get(nozzle).Value,
            LineWidth = values.Get(line).Value,
            LayerHeight = values.Get(layer).Value,
            FirstLayerHeight = values.Get(first).Value,
            BedX = values.Get(bedX).Value,
            BedY = values.Get(bedY).Value,
            BedZ = values.Get(bedZ).Value,
            BedMargin = values.Get(margin).Value,
            HoleAllowance = values.Get(hole).Value,
            LooseFit = values.Get(loose).Value,
            NormalFit = values.Get(normal).Value,
            LipFit = values.Get(lip).Or(values.Get(normal).Value),
            SlotFit = values.Get(slot).Or(values.Get(normal).Value),
            InlayFit = values.Get(inlay).Or(PrinterProfile.UsualInlayFit),
            LayerFit = values.Get(layerFit).Or(PrinterProfile.UsualLayerFit),
            MagnetAllowance = values.Get(magnet).Or(PrinterProfile.UsualMagnetAllowance),
            BatteryFit = values.Get(battery).Or(PrinterProfile.UsualBatteryFit),
            ThinnestWall = values.Get(thinnest).Or(values.Get(line).Value),
            SnapForce = values.Get(snap).Or(PrinterProfile.UsualSnapForce),
            TightFit = values.Get(tight).Value,
            Accuracy = values.Get(accuracy).Value,
            ElephantFoot = values.Get(foot).Value,
            OverhangDegrees = values.Get(overhang).Value,
            BridgeNote = values.Get(bridgeNote).Value,
            BridgeWarn = values.Get(bridgeWarn).Value,
            BridgeStop = values.Get(bridgeStop).Value,
            FlowRate = values.Get(flow).Value,
            Motion = motion(values),
            Filaments = values.Get(filaments).Or(PrinterProfile.OneFilament),
            SlicerScalesShrinkage = values.Get(scales).Value,
        };
    });
}

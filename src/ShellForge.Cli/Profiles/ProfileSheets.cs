using System.Globalization;
using ShellForge.Board.Profiles;

namespace ShellForge.Cli.Profiles;

/// <summary>All profiles as sheets, shelf by shelf.</summary>
internal static class ProfileSheets
{
    public static IEnumerable<ProfileSheet> Of(ProfileLibrary library) =>
    [
        .. library.Inserts.All.Select(Insert),
        .. library.Screws.All.Select(Screw),
        .. library.Packages.All.Select(Package),
        .. library.Leds.All.Select(Led),
        .. library.Filaments.All.Select(Filament),
        .. library.Printers.All.Select(Printer),
        .. library.Pairings.All.Select(PairingSheet.Of),
        .. library.Supplies.All.Select(Supply),
        .. library.Heat.All.Select(Heat),
        .. library.Batteries.All.Select(Battery),
    ];

    private static ProfileSheet Insert(InsertProfile p) => new ProfileLines()
        .Word("thread", p.Thread)
        .Length("outer-diameter", p.OuterDiameter)
        .Length("length", p.Length)
        .Length("hole", p.HoleDiameter)
        .Length("wall", p.WallThickness)
        .Flag("tapered", p.Tapered)
        .On("inserts", p.Name);

    private static ProfileSheet Screw(ScrewProfile p) => new ProfileLines()
        .Word("thread", p.Thread)
        .Length("thread-diameter", p.ThreadDiameter)
        .Length("head-diameter", p.HeadDiameter)
        .Length("head-height", p.HeadHeight)
        .Length("clearance-hole", p.ClearanceHole)
        .Length("washer-diameter", p.WasherDiameter)
        .Length("washer-thickness", p.WasherThickness)
        .Length("engagement-minimum", p.EngagementMinimum)
        .Length("engagement-default", p.EngagementDefault)
        .Word("head", p.Head.ToString().ToLowerInvariant())
        .Word("stock-lengths", string.Join(", ", p.StockLengths.Select(l => l.ToString("0.###", CultureInfo.InvariantCulture))) + " mm",
            p.StockLengthsSource)
        .Length("driver-diameter", p.DriverDiameter)
        .On("screws", p.Name);

    private static ProfileSheet Package(PackageProfile p)
    {
        ProfileLines lines = new ProfileLines()
            .Length("length", p.Length)
            .Length("width", p.Width)
            .Length("height", p.Height)
            .Length("height-tolerance", p.HeightTolerance)
        .Length("height-on-pins", p.HeightOnPins)
            .Length("height-in-socket", p.HeightInSocket)
            .Length("height-mid-board", p.HeightMidBoard)
            .Length("joint-protrusion", p.JointProtrusion)
            .Number("watts", p.Watts, "W")
            .Length("pusher", p.Pusher)
            .Flag("round", p.Round)
            .Flag("passive", p.Passive)
            .Flag("mounting-required", p.MountingRequired);
        return (p.Mouth is null ? lines : Mouth(lines, p.Mouth)).On("packages", p.Name);
    }

    private static ProfileLines Mouth(ProfileLines lines, MouthProfile p) => lines
        .Word("mouth.kind", p.Kind)
        .Length("mouth.overhang", p.Overhang)
        .Length("mouth.axis-height", p.AxisHeight)
        .Length("mouth.shell-width", p.ShellWidth)
        .Length("mouth.shell-height", p.ShellHeight)
        .Length("mouth.opening-width", p.OpeningWidth)
        .Length("mouth.opening-height", p.OpeningHeight)
        .Length("mouth.recess-width", p.RecessWidth)
        .Length("mouth.recess-height", p.RecessHeight)
        .Length("mouth.recess-corner-radius", p.RecessCornerRadius)
        .Length("mouth.plug-width", p.PlugWidth)
        .Length("mouth.plug-height", p.PlugHeight)
        .Length("mouth.plug-corner-radius", p.PlugCornerRadius)
        .Length("mouth.plug-length", p.PlugLength)
        .Length("mouth.seat-depth-warn", p.SeatDepthWarn)
        .Length("mouth.seat-depth-stop", p.SeatDepthStop)
        .Number("mouth.contact-amps", p.ContactAmps, "A");

    private static ProfileSheet Led(LedProfile p) => new ProfileLines()
        .Length("length", p.Length)
        .Length("width", p.Width)
        .Length("height", p.Height)
        .Length("window-width", p.WindowWidth)
        .Number("viewing-angle", p.ViewingAngleDegrees, "degrees")
        .Number("body-reflectance", p.BodyReflectance, "")
        .Word("emission", p.Emission == LedEmission.Side ? "side" : "top")
        .Number("shining-face", p.ShiningFaceDegrees, "degrees")
        .Length("axis-height", p.AxisHeight)
        .Number("full-white-ma", p.FullWhiteMilliamps, "mA")
        .Number("least-white-ma", p.LeastWhiteMilliamps, "mA")
        .Number("wiring-ma", p.WiringMilliamps, "mA")
        .Number("idle-ma", p.IdleMilliamps, "mA")
        .Number("temperature-limit", p.TemperatureLimitCelsius, "\u00b0C")
        .Length("tail-length", p.TailLength)
        .On("leds", p.Name);

    private static ProfileSheet Filament(FilamentProfile p) => new ProfileLines()
        .Word("family", p.Family)
        .Word("colour", p.Colour)
        .Word("screen", p.Screen)
        .Number("density", p.Density, "g/cm3")
        .Number("service-limit", p.ServiceLimitCelsius, "\u00b0C")
        .Number("glass-transition", p.GlassTransitionCelsius, "\u00b0C")
        .Number("strain-along-layers", p.StrainAlongLayers, "")
        .Number("strain-across-layers", p.StrainAcrossLayers, "")
        .Number("modulus", p.ModulusMegapascals, "MPa")
        .Number("shrinkage", p.Shrinkage, "")
        .Number("shrinkage-spread", p.ShrinkageSpread, "")
        .Number("conductivity", p.Conductivity, "W/mK")
        .Number("reflectance", p.Reflectance, "")
        .Length("transmission-length", p.TransmissionLength)
        .Number("iron", p.IronCelsius, "\u00b0C")
        .On("filaments", p.Name);

    private static ProfileSheet Printer(PrinterProfile p) => new ProfileLines()
        .Length("nozzle", p.Nozzle)
        .Length("line-width", p.LineWidth)
        .Length("layer-height", p.LayerHeight)
        .Length("first-layer", p.FirstLayerHeight)
        .Length("bed-x", p.BedX)
        .Length("bed-y", p.BedY)
        .Length("bed-z", p.BedZ)
        .Length("bed-margin", p.BedMargin)
        .Length("hole-allowance", p.HoleAllowance)
        .Length("loose-fit", p.LooseFit)
        .Length("normal-fit", p.NormalFit)
        .Length("lip-fit", p.LipFit)
        .Length("slot-fit", p.SlotFit)
        .Length("inlay-fit", p.InlayFit)
        .Length("layer-fit", p.LayerFit)
        .Length("magnet-allowance", p.MagnetAllowance)
        .Length("battery-fit", p.BatteryFit)
        .Length("thinnest-wall", p.ThinnestWall)
        .Number("snap-force", p.SnapForce, "")
        .Length("tight-fit", p.TightFit)
        .Length("accuracy", p.Accuracy)
        .Length("elephant-foot", p.ElephantFoot)
        .Number("overhang", p.OverhangDegrees, "degrees")
        .Length("bridge-note", p.BridgeNote)
        .Length("bridge-warn", p.BridgeWarn)
        .Length("bridge-stop", p.BridgeStop)
        .Number("flow-rate", p.FlowRate, "mm3/s")
        .Number("filaments", p.Filaments, "")
        .Number("perimeters", p.Motion.Perimeters, "")
        .Number("skin-layers", p.Motion.SkinLayers, "")
        .Number("infill", p.Motion.Infill, "")
        .Number("speed-outer", p.Motion.SpeedOuter, "mm/s")
        .Number("speed-inner", p.Motion.SpeedInner, "mm/s")
        .Number("speed-small", p.Motion.SpeedSmall, "mm/s")
        .Number("speed-skin", p.Motion.SpeedSkin, "mm/s")
        .Number("speed-top", p.Motion.SpeedTop, "mm/s")
        .Number("speed-infill", p.Motion.SpeedInfill, "mm/s")
        .Number("speed-bridge", p.Motion.SpeedBridge, "mm/s")
        .Number("speed-first-layer", p.Motion.SpeedFirstLayer, "mm/s")
        .Number("speed-travel", p.Motion.SpeedTravel, "mm/s")
        .Number("acceleration", p.Motion.Acceleration, "mm/s2")
        .Number("travel-acceleration", p.Motion.TravelAcceleration, "mm/s2")
        .Number("corner-step", p.Motion.CornerStep, "mm/s")
        .Number("layer-time", p.Motion.LayerTime, "s")
        .Number("speed-least", p.Motion.SpeedLeast, "mm/s")
        .Length("retraction", p.Motion.Retraction)
        .Number("retraction-speed", p.Motion.RetractionSpeed, "mm/s")
        .Length("retraction-from", p.Motion.RetractionFrom)
        .Number("start-time", p.Motion.StartTime, "s")
        .Number("change-time", p.Motion.ChangeTime, "s")
        .Number("change-plastic", p.Motion.ChangePlastic, "mm3")
        .Flag("slicer-scales-shrinkage", p.SlicerScalesShrinkage)
        .On("printers", p.Name);

    private static ProfileSheet Supply(SupplyProfile p) => new ProfileLines()
        .Number("volts", p.Volts, "V")
        .Number("amps", p.Amps, "A")
        .On("supplies", p.Name);

    private static ProfileSheet Heat(HeatProfile p) => new ProfileLines()
        .Range("upright-convection", p.UprightConvection, "W/m2K at 1 K/m")
        .Range("up-convection", p.UpConvection, "W/m2K at 1 K/m")
        .Range("down-convection", p.DownConvection, "W/m2K at 1 K/m")
        .Range("air-conductivity", p.AirConductivity, "W/mK")
        .Range("board-conductivity", p.BoardConductivity, "W/mK")
        .Range("printed-plastic", p.PrintedPlastic, "")
        .Range("emissivity", p.Emissivity, "")
        .Range("heat-share", p.HeatShare, "")
        .Range("led-to-board", p.LedToBoard, "K/W")
        .Range("controller-to-board", p.ControllerToBoard, "K/W")
        .Range("vent-discharge", p.VentDischarge, "")
        .Number("air-heat", p.AirHeat, "J/m3K")
        .Number("led-heat", p.LedHeat, "J/K")
        .Number("controller-heat", p.ControllerHeat, "J/K")
        .Number("board-heat", p.BoardHeat, "J/m3K")
        .Number("plastic-heat", p.PlasticHeat, "J/kgK")
        .On("heat", p.Name);

    private static ProfileSheet Battery(BatteryProfile p) => (p.Form == BatteryForm.Round
            ? new ProfileLines().Length("diameter", p.Thickness)
            : new ProfileLines().Length("thickness", p.Thickness).Length("width", p.Width))
        .Length("length", p.Length)
        .Number("grams", p.Grams, "g")
        .Flag("lithium", p.Lithium)
        .Number("warmest", p.WarmestCelsius, "\u00b0C")
        .On("batteries", p.Name);
}

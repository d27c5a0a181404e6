namespace ShellForge.Testing;

/// <summary>Plans of sweeps for tests.</summary>
public static class WrittenPlan
{
    /// <summary>A plan with every word that there is, but for goals.</summary>
    public const string Whole =
        """
        format: shellforge-plan/1
        board: [a.yaml, b.yaml]
        set: {housing.floor: 2.4}
        vary:
          housing.walls: [2, 4]
          housing.diffuser.distance: {from: 4, to: 5, step: 0.25}
          use.ambient: {from: 20, to: 40, count: 5}
          print.shell: {profiles: filaments, like: "petg-*"}
        together:
          - {housing.insert: [m2.5x4-od4.6, m3x4-od4.6], housing.closure: [snap, screws]}
        except:
          - {housing.walls: 2, housing.insert: m3x4-od4.6}
        cases:
          slim: {housing.walls: 2, housing.cable: {part: J1}}
        derive: {housing.label.text: "W{walls}"}
        name: "{board} {walls} {case}"
        mark: names
        prices: {petg-black: 22.5}
        spares: 10
        """;
}

using System.Diagnostics;
using System.Text.Json;
using Microsoft.Playwright;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

/// <summary>3MF and GLB as a foreign reader takes them: the loaders of three, bundled for this test from the page's own packages.</summary>
[Collection(SharedBrowser.Name)]
public class ModelFilesTests(Browser browser)
{
    private const string Script = """
        import { Box3, Vector3 } from 'three';
        import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
        import { ThreeMFLoader } from 'three/addons/loaders/3MFLoader.js';
        const bytes = (text) => Uint8Array.from(atob(text), (c) => c.charCodeAt(0)).buffer;
        const told = (root) => {
          const meshes = [];
          root.updateMatrixWorld(true);
          root.traverse((o) => {
            if (o.isMesh) {
              const size = new Box3().setFromObject(o).getSize(new Vector3()).toArray();
              const places = o.geometry.index ?? o.geometry.attributes.position;
              meshes.push({ name: o.name, parent: o.parent.name, triangles: places.count / 3, size, opacity: o.material.opacity ?? 1 });
            }
          });
          return { meshes, size: new Box3().setFromObject(root).getSize(new Vector3()).toArray() };
        };
        window.readGlb = async (text) => told((await new GLTFLoader().parseAsync(bytes(text), '')).scene);
        window.read3mf = (text) => told(new ThreeMFLoader().parse(bytes(text)));
        """;

    [SkippableFact]
    public async Task They_hold_the_parts_that_the_report_lists()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        string bundle = Bundle();
        using var folder = new TemporaryFolder();
        using var told = new StringWriter();
        Cli.ShellForgeCommand.Run(
            ["make", "board.yaml", "-o", folder.Path, "--formats", "stl,3mf,glb"],
            new Cli.Workbench { Out = told, Err = told, Folder = Repository.At("out-samples", "mooring-beacon") });
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(folder.File("report.json")));
        JsonElement[] parts = [.. report.RootElement.GetProperty("parts").EnumerateArray()];
        IPage page = await browser.Blank();
        await page.AddScriptTagAsync(new PageAddScriptTagOptions { Content = bundle });

        // That reader makes a mesh a colour.
        foreach (IGrouping<string, JsonElement> plate in parts.GroupBy(part => part.GetProperty("plate").GetString()!))
        {
            JsonElement printed = await Read(page, "read3mf", folder.File(plate.Key));
            JsonElement[] bodies = [.. printed.GetProperty("meshes").EnumerateArray()];
            Assert.Equal(plate.Count(), bodies.Length);
            foreach (JsonElement part in plate)
            {
                int triangles = part.GetProperty("triangles").GetInt32();
                JsonElement body = Assert.Single(bodies, each => each.GetProperty("triangles").GetInt32() == triangles);
                Assert.Equal(Three(part.GetProperty("size_mm")), Three(body.GetProperty("size")), Near);
            }
        }

        JsonElement assembled = await Read(page, "readGlb", folder.File("assembly.glb"));
        string[] names = [.. assembled.GetProperty("meshes").EnumerateArray().Select(mesh => mesh.GetProperty("name").GetString()!)];
        Assert.All(parts.Select(part => part.GetProperty("name").GetString()!).Append("board"), name => Assert.Contains(name, names));

        // Metres with y up: the housing's height runs along y.
        double[] size = [.. Three(assembled.GetProperty("size")).Select(metres => 1000 * metres)];
        Assert.InRange(size[0], 60, 70);
        Assert.InRange(size[1], 15, 30);
        Assert.InRange(size[2], 60, 70);
        await page.CloseAsync();
    }

    private static bool Near(double[] a, double[] b) => a.Zip(b).All(pair => Math.Abs(pair.First - pair.Second) < 0.002);

    private static double[] Three(JsonElement array) => [.. array.EnumerateArray().Select(number => number.GetDouble())];

    private static async Task<JsonElement> Read(IPage page, string reader, string path)
    {
        string json = await page.EvaluateAsync<string>(
            $"async (text) => JSON.stringify(await {reader}(text))", Convert.ToBase64String(File.ReadAllBytes(path)));
        return JsonDocument.Parse(json).RootElement;
    }

    private static string Bundle()
    {
        string web = Repository.At("src", "ShellForge.Output", "Page", "web");
        string packer = Path.Combine(web, "node_modules", ".bin", "esbuild");
        Skip.IfNot(File.Exists(packer), "the page's packages are not installed");
        var start = new ProcessStartInfo(packer, ["--bundle", "--format=iife", "--loader=js"])
        {
            WorkingDirectory = web,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        using Process process = Process.Start(start)!;
        process.StandardInput.Write(Script);
        process.StandardInput.Close();
        string bundle = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return bundle;
    }
}

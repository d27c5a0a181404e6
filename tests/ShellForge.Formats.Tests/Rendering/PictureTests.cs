using ShellForge.Formats.Rendering;

namespace ShellForge.Formats.Tests.Rendering;

public sealed class PictureTests
{
    [Fact]
    public void Enlarged_every_pixel_is_a_square()
    {
        Picture picture = Numbered(3, 2);

        Picture large = picture.Enlarged(4);

        Assert.Equal((12, 8), (large.Width, large.Height));
        for (int i = 0; i < 12 * 8; i++)
        {
            Assert.Equal(picture[i % 12 / 4, i / 12 / 4], large[i % 12, i / 12]);
        }
    }

    [Fact]
    public void Laid_over_another_it_covers_its_own_place_and_no_more()
    {
        var sheet = new Picture(6, 5, Rgb.White);
        Picture picture = Numbered(3, 2);

        sheet.Lay(picture, 2, 1);

        for (int i = 0; i < 6 * 5; i++)
        {
            (int x, int y) = (i % 6, i / 6);
            Assert.Equal(x is >= 2 and < 5 && y is >= 1 and < 3 ? picture[x - 2, y - 1] : Rgb.White, sheet[x, y]);
        }

        Assert.Throws<ArgumentException>(() => sheet.Lay(picture, 4, 0));
        Assert.Throws<ArgumentException>(() => sheet.Lay(picture, 0, -1));
    }

    private static Picture Numbered(int width, int height)
    {
        var picture = new Picture(width, height, Rgb.White);
        for (int i = 0; i < width * height; i++)
        {
            picture[i % width, i / width] = new Rgb((byte)(10 * i), (byte)i, 3);
        }

        return picture;
    }
}
